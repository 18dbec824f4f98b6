package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.phone.PhoneMaker;
import blindlap.screen.alone.AloneModel;
import blindlap.screen.alone.AloneView;
import blindlap.screen.book.CommittedPlanModel;
import blindlap.screen.book.FieldModel;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.book.NextSession;
import blindlap.screen.book.NoiseModel;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.book.NotebookRoomsView;
import blindlap.screen.book.OldDayModel;
import blindlap.screen.book.ProfilesModel;
import blindlap.screen.book.Rooms;
import blindlap.screen.book.SampleDaysModel;
import blindlap.screen.book.SeriesModel;
import blindlap.screen.friend.FriendModel;
import blindlap.screen.friend.FriendPage;
import blindlap.screen.onestint.OneStintModel;
import blindlap.screen.onestint.OneStintPage;
import blindlap.screen.onestint.RiderSawView;
import blindlap.screen.part.Background;
import blindlap.screen.part.DialogFolder;
import blindlap.screen.part.FileDialogs;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.phones.PhonesModel;
import blindlap.screen.plan.PlanAnswerModel;
import blindlap.screen.plan.PlanModel;
import blindlap.screen.plan.PlanPage;
import blindlap.screen.recording.RecordingModel;
import blindlap.screen.recording.RecordingPage;
import blindlap.screen.review.ReviewModel;
import blindlap.screen.review.ReviewPage;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.ride.RideWays;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.screen.trail.TrailModel;
import blindlap.screen.trail.TrailPage;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;
import javafx.util.Duration;

/** Which view belongs to which page: models get the desk, views get models. */
final class Pages {
  private final Desk desk;
  private final Shell shell;
  private final Look look;
  private final Background background;
  private final LongSupplier monotonic;
  private final KeepingModel keeping;
  private final Optional<SampleDaysModel> samples;
  private final Optional<PhonesRoom> phones;
  private final DialogFolder folder = new DialogFolder(Path.of(""));
  private Runnable closing = () -> {};

  /**
   * @param phones makes phones of the notebook's sessions; empty where none can come
   */
  Pages(
      Desk desk,
      Shell shell,
      Look look,
      Background background,
      LongSupplier monotonic,
      KeepingModel keeping,
      Optional<SampleDaysModel> samples,
      Optional<PhoneMaker> phones) {
    this.desk = desk;
    this.shell = shell;
    this.look = look;
    this.background = background;
    this.monotonic = monotonic;
    this.keeping = keeping;
    this.samples = samples;
    this.phones = phones.map(this::phones);
  }

  private PhonesRoom phones(PhoneMaker maker) {
    PhonesModel model =
        new PhonesModel(maker, desk.riderDays(), desk::dataVersion, background, desk.clock());
    return new PhonesRoom(look, shell, model, monotonic);
  }

  Map<Shell.Page, Supplier<? extends Node>> makers() {
    Map<Shell.Page, Supplier<? extends Node>> makers = new EnumMap<>(Shell.Page.class);
    makers.put(Shell.Page.NOTEBOOK, this::notebook);
    makers.put(Shell.Page.PLAN, this::plan);
    makers.put(Shell.Page.SWAP, this::swap);
    makers.put(Shell.Page.RIDE, this::ride);
    makers.put(Shell.Page.TRAIL, this::trail);
    makers.put(Shell.Page.REVIEW, this::review);
    return makers;
  }

  /** The window closes: what is in hand is kept, and phones are off. */
  void closing() {
    closing.run();
    phones.ifPresent(PhonesRoom::close);
  }

  private Node notebook() {
    NextSession next = new NextSession(desk.anotherDay(), shell, background);
    NotebookModel model =
        new NotebookModel(desk.sessionList(), desk.history(), next, shell, background);
    model.refresh();
    shell
        .pageProperty()
        .addListener(
            (o, before, now) -> {
              if (now == Shell.Page.NOTEBOOK) {
                model.refresh();
              }
            });
    Node[] page = new Node[1];
    FileDialogs dialogs = dialogs(() -> page[0]);
    page[0] =
        new NotebookRoomsView(
            look,
            new NotebookRoomsView.Models(
                model,
                keeping,
                samples,
                new NoiseModel(desk.history(), background),
                new SeriesModel(desk.series(), desk.seriesReports(), next, background),
                new FieldModel(desk.field(), background),
                new ProfilesModel(desk.profiles(), desk.clock().getZone(), background),
                new OldDayModel(desk.plainDays(), desk.history(), background),
                new CommittedPlanModel(
                    desk.sessions(),
                    desk.planning(),
                    shell,
                    desk.clock().getZone(),
                    model::copyAsPlan,
                    background)),
            new Rooms(),
            dialogs);
    return page[0];
  }

  /** Dialogs of the window that a page is in. */
  private FileDialogs dialogs(Supplier<Node> page) {
    return new FileDialogs(
        () -> page.get().getScene() == null ? null : page.get().getScene().getWindow(), folder);
  }

  private Node ride() {
    RideModel model =
        new RideModel(desk.riderDays(), desk::dataVersion, background, desk.clock(), monotonic);
    AloneModel alone =
        new AloneModel(desk.aloneDays(), background, desk.clock(), monotonic, model::tick);
    shell.whenShown(Shell.Page.RIDE, alone::open);
    shell.whenShown(Shell.Page.RIDE, model::open);
    model.sheetProperty().addListener((o, before, now) -> alone.reload());
    OneStintModel saw = oneStint(model::tick);
    shell.whenShown(Shell.Page.RIDE, saw::open);
    StackPane page = new StackPane();
    RecordingModel recording = new RecordingModel(desk.sessions(), desk.recordings(), background);
    FileDialogs dialogs = dialogs(() -> page);
    Node[] both = new Node[2];
    RecordingPage settled =
        new RecordingPage(
            look, recording, dialogs, () -> page.getChildren().setAll(both[0]), monotonic);
    RidePage ridden =
        new RidePage(
            look,
            model,
            new AloneView(look, alone),
            () -> shell.go(Shell.Page.NOTEBOOK),
            new RideWays(
                () -> shell.go(Shell.Page.REVIEW),
                () -> {
                  shell.sessionProperty().get().ifPresent(recording::open);
                  page.getChildren().setAll(both[1]);
                  settled.enter();
                },
                phones.map(room -> room.door(Shell.Page.RIDE)).orElse(null)));
    phones.ifPresent(room -> room.beside(page, ridden, model.events()));
    ridden.ask(new RiderSawView(look, saw));
    both[0] = ridden;
    both[1] = settled;
    page.getChildren().setAll(ridden);
    return page;
  }

  private OneStintModel oneStint(Runnable written) {
    return new OneStintModel(desk.oneStints(), desk.sessions(), background, monotonic, written);
  }

  private Node swap() {
    SwapModel model =
        new SwapModel(
            desk.helperDays(),
            desk.riderDays(),
            desk::dataVersion,
            background,
            desk.clock(),
            monotonic);
    shell.whenShown(Shell.Page.SWAP, model::open);
    keepInHand(model);
    FriendModel friend =
        new FriendModel(
            desk.aloneDays(), desk.helperDays(), desk.masks(), desk.clock(), background);
    shell.whenShown(Shell.Page.SWAP, friend::open);
    SwapPage page =
        new SwapPage(
            look,
            model,
            () -> shell.go(Shell.Page.NOTEBOOK),
            () -> shell.go(Shell.Page.RIDE),
            () -> shell.go(Shell.Page.REVIEW));
    FriendPage both =
        new FriendPage(
            look,
            friend,
            page,
            () -> shell.go(Shell.Page.NOTEBOOK),
            () -> shell.go(Shell.Page.RIDE));
    OneStintModel slip = oneStint(() -> {});
    shell.whenShown(Shell.Page.SWAP, slip::open);
    page.offerOneStint(slip::begin);
    phones.ifPresent(
        room -> {
          page.offerPhones(room.door(Shell.Page.SWAP));
          room.waitedForBy(model.events());
        });
    both.offerOneStint(slip::begin);
    return new OneStintPage(look, slip, both, () -> shell.go(Shell.Page.RIDE));
  }

  /** What is in hand is kept by the clock, whichever page is in view. */
  private void keepInHand(SwapModel model) {
    Timeline beats = new Timeline(new KeyFrame(Duration.seconds(1), e -> model.beat()));
    beats.setCycleCount(Animation.INDEFINITE);
    beats.play();
    closing =
        () -> {
          beats.stop();
          model.closing();
        };
  }

  private Node review() {
    ReviewModel model =
        new ReviewModel(
            desk.sessions(),
            desk.keys(),
            desk.masks(),
            desk.reviews(),
            desk.anotherDay(),
            desk.afterSteps(),
            shell::openDraft,
            background);
    shell.whenShown(Shell.Page.REVIEW, model::open);
    Node[] page = new Node[1];
    FileDialogs dialogs = dialogs(() -> page[0]);
    page[0] = new ReviewPage(look, model, dialogs);
    return page[0];
  }

  private Node trail() {
    TrailModel model = new TrailModel(desk.trails(), background);
    shell
        .pageProperty()
        .addListener(
            (o, before, now) -> {
              if (now == Shell.Page.TRAIL) {
                model.refresh();
              }
            });
    model.refresh();
    Node[] page = new Node[1];
    FileDialogs dialogs = dialogs(() -> page[0]);
    page[0] = new TrailPage(look, model, dialogs);
    return page[0];
  }

  private Node plan() {
    PlanModel model =
        new PlanModel(
            desk.planning(),
            desk.history(),
            desk.helperSheets(),
            desk.helperDays(),
            desk.clock(),
            shell,
            background,
            PlanAnswerModel.USUAL);
    Node[] page = new Node[1];
    FileDialogs dialogs = dialogs(() -> page[0]);
    page[0] = new PlanPage(look, model, dialogs);
    return page[0];
  }
}

package blindlap.screen.book;

import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Look;
import blindlap.wording.day.Words;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.StackPane;

/** The Notebook page with the rooms behind it; each is made when it is first entered. */
public final class NotebookRoomsView extends StackPane {
  private static final Words WORDS = Words.of("rooms");

  private final Look look;
  private final Models models;
  private final Dialogs dialogs;
  private final Rooms rooms;
  private final NotebookPage home;
  private final Map<Rooms.Room, Hyperlink> doors = new EnumMap<>(Rooms.Room.class);
  private final Map<Rooms.Room, Node> made = new EnumMap<>(Rooms.Room.class);

  /** The models of the page and its rooms. */
  public record Models(
      NotebookModel notebook,
      KeepingModel keeping,
      Optional<SampleDaysModel> samples,
      NoiseModel noise,
      SeriesModel series,
      FieldModel field,
      ProfilesModel profiles,
      OldDayModel oldDay,
      CommittedPlanModel committed) {}

  public NotebookRoomsView(Look look, Models models, Rooms rooms, Dialogs dialogs) {
    this.look = look;
    this.models = models;
    this.rooms = rooms;
    this.dialogs = dialogs;
    this.home =
        new NotebookPage(
            look, models.notebook(), models.keeping(), models.samples(), dialogs, doors());
    rooms.roomProperty().addListener((o, before, now) -> show(before, now));
    getChildren().setAll(home);
    models.committed().whenAsked(() -> rooms.go(Rooms.Room.COMMITTED_PLAN));
    if (models.committed().asked()) {
      rooms.go(Rooms.Room.COMMITTED_PLAN);
    }
  }

  private FlowPane doors() {
    FlowPane row = new FlowPane();
    row.getStyleClass().add("doors");
    for (Rooms.Room room : Rooms.Room.values()) {
      if (room.hasDoor()) {
        Hyperlink door = new Hyperlink(WORDS.say(room.name()));
        door.setOnAction(e -> rooms.go(room));
        doors.put(room, door);
        row.getChildren().add(door);
      }
    }
    return row;
  }

  private void show(Rooms.Room before, Rooms.Room now) {
    Node view = now == Rooms.Room.NOTEBOOK ? home : made.computeIfAbsent(now, this::make);
    getChildren().setAll(view);
    if (view instanceof NoisePage noise) {
      noise.enter();
    } else if (view instanceof SeriesPage series) {
      series.enter();
    } else if (view instanceof FieldPage field) {
      field.enter();
    } else if (view instanceof ProfilesPage profiles) {
      profiles.enter();
    } else if (view instanceof OldDayPage oldDay) {
      oldDay.enter();
    } else if (view instanceof CommittedPlanPage plan) {
      plan.enter();
    } else {
      models.notebook().refresh();
      Hyperlink door = doors.get(before);
      if (door != null) {
        door.requestFocus();
      }
    }
  }

  private Node make(Rooms.Room room) {
    Runnable away = () -> rooms.go(Rooms.Room.NOTEBOOK);
    return switch (room) {
      case NOTEBOOK -> home;
      case NOISE -> new NoisePage(look, models.noise(), away);
      case SERIES -> new SeriesPage(look, models.series(), dialogs, away);
      case FIELD -> new FieldPage(look, models.field(), dialogs, away);
      case PROFILES -> new ProfilesPage(look, models.profiles(), away);
      case OLD_DAY -> new OldDayPage(look, models.oldDay(), dialogs, away);
      case COMMITTED_PLAN -> new CommittedPlanPage(look, models.committed(), away);
    };
  }
}

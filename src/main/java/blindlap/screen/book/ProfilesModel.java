package blindlap.screen.book;

import blindlap.desk.ProfileBook;
import blindlap.screen.part.Background;
import blindlap.session.KeptProfile;
import blindlap.wording.ProfileWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/** The room of profiles: who should look at what, made, changed and removed. */
public final class ProfilesModel {
  private final ProfileBook book;
  private final ZoneId zone;
  private final Background background;
  private final StringProperty name = new SimpleStringProperty("");
  private final StringProperty measures = new SimpleStringProperty("");
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Kept> kept =
      new ReadOnlyObjectWrapper<>(new Kept(List.of(), List.of(), 0));

  /**
   * A profile in words.
   *
   * @param version number and time
   */
  public record Row(String name, String measures, String version) {}

  /**
   * What is kept.
   *
   * @param profiles the last version of each
   * @param earlier every version that is not the last, and removals, a line each
   * @param damaged how many versions another program changed
   */
  public record Kept(List<Row> profiles, List<String> earlier, int damaged) {
    public Kept {
      profiles = List.copyOf(profiles);
      earlier = List.copyOf(earlier);
    }
  }

  public ProfilesModel(ProfileBook book, ZoneId zone, Background background) {
    this.book = book;
    this.zone = zone;
    this.background = background;
  }

  /** The kind of rider, as typed. */
  public StringProperty nameProperty() {
    return name;
  }

  /** The measures, as typed. */
  public StringProperty measuresProperty() {
    return measures;
  }

  /** What became of the last wish; empty before. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** What the notebook holds. */
  public ReadOnlyObjectProperty<Kept> keptProperty() {
    return kept.getReadOnlyProperty();
  }

  /** Reads the notebook; what is typed stays. */
  public void refresh() {
    background.run(this::read, kept::set, this::fail);
  }

  private Kept read() {
    List<KeptProfile> last = book.profiles();
    return new Kept(
        last.stream().map(this::row).toList(),
        book.all().stream()
            .filter(each -> !last.contains(each))
            .map(each -> ProfileWords.line(each, zone))
            .toList(),
        book.damaged());
  }

  private Row row(KeptProfile version) {
    return new Row(
        version.profile().name(),
        ProfileWords.measures(version),
        ProfileWords.say(
            "page.version", String.valueOf(version.number()), ProfileWords.made(version, zone)));
  }

  /** Keeps what is typed; what was refused stays typed. */
  public void keep() {
    String typedName = name.get();
    String typedMeasures = measures.get();
    ask(
        () -> book.keep(typedName, typedMeasures),
        () -> {
          name.set("");
          measures.set("");
        });
  }

  /** Takes a profile into the fields, to be changed there. */
  public void change(Row row) {
    name.set(row.name());
    measures.set(row.measures());
    said.set("");
  }

  /** Removes a profile, by a version that says so. */
  public void remove(Row row) {
    ask(() -> book.remove(row.name()), () -> {});
  }

  private void ask(Callable<ProfileBook.Result> wish, Runnable granted) {
    background.run(
        wish,
        result -> {
          if (result instanceof ProfileBook.Result.Kept now) {
            granted.run();
            said.set(ProfileWords.kept(now.version(), now.fresh()));
            refresh();
          } else {
            said.set(Problems.sentence(((ProfileBook.Result.Refused) result).why()));
          }
        },
        this::fail);
  }

  private void fail(Exception why) {
    said.set(Trouble.sentence(why));
  }
}

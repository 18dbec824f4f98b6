package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.FactKinds;
import blindlap.session.Hash;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The enduring text of entries. */
class EntryTextTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void every_kind_of_fact_comes_back_from_its_text_as_it_went_in(long seed) {
    AnyFact any = new AnyFact(seed);
    for (Fact fact : any.everyKind()) {
      StoredEntry written = EntryText.write(any.entry(fact));
      StoredEntry read = EntryText.read(written.text());
      assertThat(read).isEqualTo(written);
      assertThat(EntryText.write(read.entry()).text()).isEqualTo(written.text());
    }
  }

  @Test
  void the_seeded_facts_are_of_every_kind_there_is() {
    List<String> made =
        new AnyFact(1).everyKind().stream().map(fact -> fact.getClass().getSimpleName()).toList();
    List<String> declared = FactKinds.all().stream().map(Class::getSimpleName).toList();
    assertThat(made).containsExactlyInAnyOrderElementsOf(declared);
  }

  /** Entries of every kind, as each was written first; lines may be added, never changed. */
  static List<String> golden() throws IOException {
    try (var in = EntryTextTest.class.getResourceAsStream("entries-1.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("golden")
  void a_text_that_was_written_once_is_read_and_written_the_same_for_ever(String text) {
    StoredEntry read = EntryText.read(text);
    assertThat(EntryText.write(read.entry()).text().equals(text))
        .as("entry of the kind %s", EntryText.kind(read.entry()))
        .isTrue();
  }

  @Test
  void there_is_such_a_text_of_every_kind() throws IOException {
    List<String> kinds = new ArrayList<>();
    for (String text : golden()) {
      kinds.add(EntryText.kind(EntryText.read(text).entry()));
    }
    for (Class<?> kind : FactKinds.all()) {
      assertThat(kinds).as("add a line to entries-1.txt").contains(kind.getSimpleName());
    }
  }

  @Test
  void text_is_kept_in_one_spelling_and_that_is_what_the_writer_gets_back() {
    Fact fact = new Fact.NoteWritten(new LapId(1, 1), "cafe\u0301");
    StoredEntry written = EntryText.write(new AnyFact(1).entry(fact));
    assertThat(written.entry().fact()).isEqualTo(new Fact.NoteWritten(new LapId(1, 1), "café"));
    assertThat(written.hash()).isEqualTo(Hash.of(written.text()));
  }

  @Test
  void half_a_character_is_refused_because_it_has_no_bytes_to_hash() {
    Fact fact = new Fact.NoteWritten(new LapId(1, 1), "cut \uD83D off");
    assertThatThrownBy(() -> EntryText.write(new AnyFact(1).entry(fact)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("half of a character");
  }

  @Test
  void an_entry_that_could_not_be_read_again_is_never_written() {
    Fact lacking = new Fact.NoteWritten(new LapId(1, 1), null);
    assertThatThrownBy(() -> EntryText.write(new AnyFact(1).entry(lacking)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("text");
  }

  @Test
  void the_same_content_in_another_spelling_is_not_an_entry() {
    Entry entry = new AnyFact(3).entry(new Fact.DayClosed());
    String text = EntryText.write(entry).text();
    List<String> others =
        List.of(
            text.replace(",", ", "),
            text.replace("\"body\":{}", "\"body\":{\"more\":\"1\"}"),
            text.replace("\"body\":{}", "\"body\":{},\"body\":{}"),
            text + " ",
            text + "{}");
    for (String other : others) {
      assertThatThrownBy(() -> EntryText.read(other)).isInstanceOf(IllegalArgumentException.class);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "null", "[]", "{}", "7", "{\"form\":\"blindlap-entry-1\"}", "\u0000"})
  void what_is_no_entry_at_all_is_refused(String text) {
    assertThatThrownBy(() -> EntryText.read(text)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void an_unknown_kind_and_an_unknown_form_are_named() {
    String text = EntryText.write(new AnyFact(3).entry(new Fact.DayClosed())).text();
    assertThatThrownBy(() -> EntryText.read(text.replace("DayClosed", "DayOpened")))
        .hasMessageContaining("DayOpened");
    assertThatThrownBy(() -> EntryText.read(text.replace("blindlap-entry-1", "blindlap-entry-3")))
        .hasMessageContaining("blindlap-entry-3");
  }
}

package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.Weight;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A card holds its words whatever they are: nothing outside, nothing on top of another. */
class FindingCardTest {
  private static final int CARDS = Integer.getInteger("cards", 60);

  private static final CardContent.Paragraph CAUTION =
      new CardContent.Paragraph(
          "Caution.",
          "A finding holds for this rider, this trail and this day. It approves no part and no"
              + " setting. Follow the maker's manual, its torque and pressure limits and its list"
              + " of approved parts; if in doubt a trained mechanic decides. Blindlap supplies no"
              + " torque, no pressure and no approval: every such value here was typed in by the"
              + " tester.",
          0);

  private static final List<String> PRINTS =
      List.of(
          "fingerprint of the plan 3dbffceb 189e74d1 …",
          "fingerprint of the review 86f732aa 67bebe1c …");

  /** A picture that fills its place with one ink, so that it can be told from the words. */
  private record Filled(double height) implements Drawing {
    @Override
    public Spoken spoken() {
      return new Spoken("filled", "");
    }

    @Override
    public double heightFor(double width, double textScale) {
      return height * textScale;
    }

    @Override
    public void draw(Surface surface, double width, double textScale) {
      surface.rectangle(new Box(0, 0, width, heightFor(width, textScale)), Ink.C);
      Face face = new Face(Weight.REGULAR, 14 * textScale);
      surface.text("picture", 0, face.ascent(), Anchor.START, face, Ink.C);
    }
  }

  private static String words(Random random, int most) {
    int length = random.nextInt(most + 1);
    StringBuilder text = new StringBuilder();
    while (text.length() < length) {
      int word = random.nextInt(12) == 0 ? 90 : 1 + random.nextInt(12);
      for (int i = 0; i < word; i++) {
        text.append("abcdefghiklmnorstuwWMÄé1234.,%".charAt(random.nextInt(30)));
      }
      text.append(' ');
    }
    return text.length() > length ? text.substring(0, length).strip() : text.toString().strip();
  }

  private static CardContent content(Random random) {
    List<Drawing> pictures = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      pictures.add(new Filled(60 + random.nextInt(700)));
    }
    List<CardContent.Paragraph> paragraphs = new ArrayList<>();
    paragraphs.add(new CardContent.Paragraph("Rider R. Lind, Quarry loop.", words(random, 900), 0));
    paragraphs.add(
        new CardContent.Paragraph(
            "Ridden blind, order drawn by lot and sealed.", words(random, 500), 0));
    int remarks = random.nextInt(6);
    for (int i = 0; i < remarks; i++) {
      paragraphs.add(new CardContent.Paragraph("", words(random, 600), remarks - i));
    }
    return new CardContent(
        words(random, 400),
        words(random, 260),
        words(random, 60),
        "; " + words(random, 200),
        random.nextBoolean() ? "" : "The blind was broken. " + words(random, 400),
        pictures,
        paragraphs,
        IntStream.rangeClosed(1, remarks).mapToObj(gone -> gone + " more.").toList(),
        CAUTION,
        PRINTS,
        "Blindlap",
        new Spoken("what it shows", ""));
  }

  @ParameterizedTest
  @EnumSource
  void noWordsLeaveTheCardOrCoverOthers(CardFormat format) {
    Random random = new Random(20261128);
    for (int i = 0; i < CARDS; i++) {
      CardContent content = content(random);
      RecordingSurface surface = drawn(content, format);
      Box frame = new Box(0, 0, format.width(), format.height());
      String which = format + " " + i;
      assertThat(surface.words).as(which).allMatch(words -> frame.contains(words.box()));
      assertThat(surface.boxes).as(which).allMatch(box -> frame.grown(0.5).contains(box));
      assertThat(covered(surface)).as(which).isEmpty();
      assertThat(onPictures(surface)).as(which).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource
  void whatMustBeSaidIsNeverCut(CardFormat format) {
    Random random = new Random(7);
    for (int i = 0; i < CARDS; i++) {
      CardContent content = content(random);
      RecordingSurface surface = drawn(content, format);
      String all = bare(surface.words.stream().map(w -> w.words()).collect(Collectors.joining()));
      assertThat(all)
          .contains(bare(content.mark()))
          .contains(bare(CAUTION.strong() + CAUTION.plain()))
          .contains(bare(content.paragraphs().get(0).strong()))
          .contains(bare(content.paragraphs().get(1).strong()))
          .contains(bare(PRINTS.get(0)))
          .contains(bare(PRINTS.get(1)))
          .contains(bare(content.phrase()));
      assertThat(surface.words)
          .filteredOn(w -> CAUTION.plain().contains(w.words().strip()))
          .filteredOn(w -> w.words().length() > 30)
          .allMatch(w -> w.face().size() >= 20);
      assertThat(surface.words)
          .filteredOn(w -> !w.words().equals("picture"))
          .allMatch(w -> w.face().size() >= 18);
    }
  }

  /** Who leaves first is declared: nobody is gone while one who leaves before him is there. */
  @ParameterizedTest
  @EnumSource
  void whatLeavesDoesSoInItsOrderAndItsNumberIsSaid(CardFormat format) {
    Random random = new Random(5);
    int left = 0;
    for (int i = 0; i < CARDS; i++) {
      List<CardContent.Paragraph> paragraphs = new ArrayList<>();
      paragraphs.add(new CardContent.Paragraph("Rider R. Lind.", words(random, 200), 0));
      paragraphs.add(new CardContent.Paragraph("Ridden blind.", words(random, 200), 0));
      int remarks = 1 + random.nextInt(8);
      for (int k = 1; k <= remarks; k++) {
        paragraphs.add(new CardContent.Paragraph("", "Remark" + k + " " + words(random, 200), k));
      }
      CardContent content =
          new CardContent(
              "Which?",
              "It was ",
              "real",
              ".",
              random.nextBoolean() ? "" : "The blind was broken.",
              List.of(new Filled(150 + random.nextInt(250))),
              paragraphs,
              IntStream.rangeClosed(1, remarks).mapToObj(gone -> gone + " gone.").toList(),
              CAUTION,
              PRINTS,
              "Blindlap",
              new Spoken("it", ""));
      RecordingSurface surface = drawn(content, format);
      String all = surface.words.stream().map(w -> w.words()).collect(Collectors.joining(" "));
      List<Integer> there =
          IntStream.rangeClosed(1, remarks)
              .filter(k -> all.contains("Remark" + k + " "))
              .boxed()
              .toList();
      int gone = remarks - there.size();
      assertThat(there).isEqualTo(IntStream.rangeClosed(gone + 1, remarks).boxed().toList());
      assertThat(all.contains(" gone.")).isEqualTo(gone > 0);
      assertThat(all).contains(gone == 0 ? "Rider R. Lind." : gone + " gone.");
      left += gone > 0 ? 1 : 0;
    }
    assertThat(left).isGreaterThan(CARDS / 20).isLessThan(CARDS);
  }

  /** Where the mark stands it is the largest caption: only the answer is larger. */
  @ParameterizedTest
  @EnumSource
  void theMarkIsTheLargestCaption(CardFormat format) {
    Random random = new Random(11);
    for (int i = 0; i < CARDS; i++) {
      CardContent content = content(random);
      RecordingSurface surface = drawn(content, format);
      double mark =
          surface.words.stream()
              .filter(w -> w.words().startsWith("The blind was broken."))
              .mapToDouble(w -> w.face().size())
              .findFirst()
              .orElse(100);
      assertThat(mark).isGreaterThanOrEqualTo(28);
      assertThat(surface.words)
          .filteredOn(w -> w.face().weight() != Weight.SERIF)
          .filteredOn(w -> !w.words().equals("picture"))
          .allMatch(w -> w.face().size() <= mark);
    }
  }

  @Test
  void everyInkOfACardCanBeReadOnItsPaper() {
    for (Palette palette : List.of(Palette.PAPER, Palette.PRINT)) {
      for (Ink ink : List.of(Ink.INK, Ink.SECOND, Ink.A, Ink.B, Ink.C, Ink.D)) {
        assertThat(palette.contrast(ink, Ink.PAPER)).as("%s %s", palette, ink).isGreaterThan(4.5);
      }
      assertThat(palette.contrast(Ink.INK, Ink.HIGHLIGHT)).isGreaterThan(7);
    }
  }

  @Test
  void everySampleDrawingFindsItsPlace() {
    for (CardFormat format : CardFormat.values()) {
      Samples.all()
          .forEach(
              (name, drawing) -> {
                CardContent content =
                    new CardContent(
                        "Which?",
                        "It was ",
                        "real",
                        ".",
                        "",
                        List.of(drawing),
                        List.of(new CardContent.Paragraph("Rider R. Lind.", "16 of 16 stints.", 0)),
                        List.of(),
                        CAUTION,
                        PRINTS,
                        "Blindlap",
                        new Spoken("it", ""));
                RecordingSurface surface = drawn(content, format);
                Box frame = new Box(0, 0, format.width(), format.height());
                assertThat(surface.words)
                    .as(name + " " + format)
                    .allMatch(words -> frame.contains(words.box()));
              });
    }
  }

  private static RecordingSurface drawn(CardContent content, CardFormat format) {
    return RecordingSurface.of(FindingCard.of(content, format), format.width(), 1);
  }

  private static String bare(String words) {
    return words.replace(" ", "");
  }

  private static List<String> covered(RecordingSurface surface) {
    List<String> pairs = new ArrayList<>();
    for (int i = 0; i < surface.words.size(); i++) {
      for (int j = i + 1; j < surface.words.size(); j++) {
        RecordingSurface.Words a = surface.words.get(i);
        RecordingSurface.Words b = surface.words.get(j);
        double least = Math.min(area(a.box()), area(b.box()));
        if (a.box().overlap(b.box()) > 0.12 * least && least > 0) {
          pairs.add(a.words() + " / " + b.words());
        }
      }
    }
    return pairs;
  }

  private static List<String> onPictures(RecordingSurface surface) {
    List<String> hits = new ArrayList<>();
    for (int i = 0; i < surface.boxes.size(); i++) {
      Box box = surface.boxes.get(i);
      if (surface.fills.get(i) == Ink.C) {
        surface.words.stream()
            .filter(w -> w.ink() != Ink.C && w.box().overlap(box) > 1)
            .forEach(w -> hits.add(w.words()));
      }
    }
    return hits;
  }

  private static double area(Box box) {
    return box.width() * box.height();
  }
}

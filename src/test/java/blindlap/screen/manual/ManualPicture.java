package blindlap.screen.manual;

import java.nio.file.Path;
import java.util.Locale;

/** Every picture of README and docs: what it is called there, and what of the page it shows. */
public enum ManualPicture {
  PLAN_TOP(
      "The top of the Plan page: the question, rider, trail with its version, day, kind of"
          + " session.",
      Promise.part("", "Setups")),
  PLAN_ANSWER(
      "The answer: what a difference 16 stints can show, and the knobs below it.",
      Promise.part("What can this day show?", "More or fewer stints")),
  PLAN_CURVE(
      "More or fewer stints: the smallest difference that days of 8 to 48 stints would show.",
      Promise.part("More or fewer stints", "How would such a day end?")),
  PLAN_ODDS(
      "How such a day would end for four true differences, in days of 100, and what it can show in"
          + " each measure.",
      Promise.part("How would such a day end?", "If the day ends early or loses laps")),
  PLAN_SETUPS(
      "The first of two setups: name, component, mass, price, and two settings.",
      Promise.part("Setups", "Setup 2: Fork N")),
  PLAN_DIFFERS(
      "What differs between two forks: the mass on the bike, and no setting.",
      Promise.part("What differs", "Measures")),
  PLAN_MEASURES(
      "The first measure, a lap time by recording and watch, and what the setups cost more.",
      Promise.part("Measures", "Measure 2: upper bends")),
  PLAN_DAY(
      "The day: its times, and a strip of 16 stints with 7 h 44 min to spare.",
      Promise.part("The day", "How blind")),
  PLAN_LEVEL(
      "How blind: five levels, each with what it proves, what it needs and what it may say.",
      Promise.part("How blind", "What can this day show?")),
  PLAN_END(
      "The end of the Plan page: what is good to know, the caution and the commit.",
      Promise.part("Good to know", "")),
  COMMIT_HAND_OVER(
      "The helper's page asks for four digits before anything is drawn.", Promise.whole()),
  COMMIT_SIGN("The plan as it will be committed, to be read and signed.", Promise.whole()),
  COMMIT_PHRASE("The helper phrase of six words, shown once.", Promise.whole()),
  COMMIT_WORDS("Two of the words are asked back by their places.", Promise.whole()),
  COMMIT_SEALED(
      "Plan and order are sealed: the fingerprint, as text and as a code.", Promise.whole()),
  COMMIT_BLANK(
      "The helper's page is hidden: it asks for the digits and says nothing else.",
      Promise.whole()),
  COMMIT_SHEET("The helper's sheet can be written for A4 or Letter.", Promise.whole()),
  SWAP(
      "The Swap page in stint 5: what to fit, what to set and measure, and whether it is safe.",
      Promise.whole()),
  ONE_STINT(
      "What to set for stint 6, shown once to somebody who is not the helper.", Promise.whole()),
  RIDE(
      "The Ride page in stint 5: the code, the watch that has stopped, and the questions of the"
          + " lap.",
      Promise.whole()),
  PHONES(
      "The Phones page: two phones are in, and the codes to scan for rider and starter.",
      Promise.whole()),
  RECORDING("A recording that is being settled: two passes wait for an answer.", Promise.whole()),
  BLIND_REVIEW("The blind review: laps by code, one lap and one sector void.", Promise.whole()),
  BLIND_REVIEW_CLOSED(
      "The review is closed: its fingerprint, and the field for the helper phrase.",
      Promise.whole()),
  REVIEW(
      "The finding: its sentence, the fingerprints, every stint by setup, and the difference with"
          + " its interval.",
      Promise.part("", "In ridden order")),
  REVIEW_CURVE(
      "Every stint in ridden order with the drift, and how far the day speaks for each difference.",
      Promise.part("In ridden order", "Where on the trail")),
  WHERE(
      "Where on the trail: the sentence, the line with its band, and a row for every sector.",
      Promise.part("Where on the trail", "Other measures")),
  REVIEW_OTHERS(
      "The other measures: their stints, differences with intervals, p adjusted, and a sentence"
          + " each.",
      Promise.part("Other measures", "Who should look at what")),
  REVIEW_PROFILES(
      "Who should look at what: two profiles, each with the sentences of its measures.",
      Promise.part("Who should look at what", "Did the blind hold?")),
  REVIEW_BLIND(
      "Whether the blind held: guesses by stint; and what to do next.",
      Promise.part("Did the blind hold?", "Other sessions of the same question")),
  CARD_WIDE(
      "The card of the day: the sentence, every stint, the difference with its bands, the caution.",
      Promise.whole()),
  CARD_TALL(
      "The tall card of another day, on which the blind was broken, two fits were wrong and rain"
          + " ended it.",
      Promise.whole()),
  TRAIL("The Trail page: the line of the trail, its four gates and its version.", Promise.whole()),
  PROFILES("The room of profiles: two are kept, and two fields make another.", Promise.whole()),
  NOTEBOOK(
      "The Notebook page: its sessions with what was found, the one in hand, and the doors to"
          + " more.",
      Promise.whole()),
  NOISE("Rider noise, day by day, of K. Vogt on Juniper chute.", Promise.whole()),
  FIELD(
      "The field: how three forks stand to Fork M, solid where they met it on a day, open where one"
          + " only follows.",
      Promise.whole()),
  OLD_DAYS(
      "Old days that are brought in: their columns, what each means, and the first rows as they are"
          + " understood.",
      Promise.whole()),
  SERIES_SEALED(
      "A series before its end: two of its three days are ridden, and nothing is told of them.",
      Promise.whole()),
  SERIES_RIDERS(
      "A series of six days and five riders: the difference of each and of all together.",
      Promise.whole()),
  THREE_SETUPS(
      "Another day, with three tyres: which differ from which, with adjusted p.",
      Promise.part("", "In ridden order")),
  STEPS_REVIEW(
      "The finding of a steps day: lap time at four settings of the rebound, and the trend.",
      Promise.part("", "In ridden order")),
  STEPS_PLAN(
      "The Plan page of a steps day: one setting, its four levels, the way they are set and the"
          + " limits.",
      Promise.part("Setups", "Measures")),
  TELLING_PLAN(
      "The Plan page of a telling run: the form of its trials, their number and the two levels.",
      Promise.part("Can you tell? The trials", "Measures")),
  TELLING_RIDE(
      "The Ride page after the third lap of a trial: which lap differed, and how sure.",
      Promise.whole()),
  TELLING_REVIEW(
      "The finding of a telling run: the count, every trial, and the number right against"
          + " guessing.",
      Promise.part("", "Method and exact figures")),
  ALONE_MOUNT(
      "The Ride page of a rider who swaps alone: what to mount for stint 1, measured and checked.",
      Promise.whole()),
  PHONE_RIDE(
      "The rider's page on a phone: the code, the questions of the lap, and two answers still"
          + " open.",
      Promise.whole()),
  PHONE_RIDE_KEPT(
      "The same page without signal: what was said is kept on the phone and not yet in the"
          + " notebook.",
      Promise.whole()),
  PHONE_START(
      "The starter's page on a phone while the watch runs: Stop, and nothing of the time.",
      Promise.whole());

  /** How all are taken anew. */
  static final String AGAIN = "take them again, DEVELOPERS.md has the command";

  private final String words;
  private final Promise promise;

  ManualPicture(String words, Promise promise) {
    this.words = words;
    this.promise = promise;
  }

  /** What stands for the picture where it cannot be seen, one true sentence. */
  String words() {
    return words;
  }

  Promise promise() {
    return promise;
  }

  /** The picture, or the table beside it. */
  Path file(String ending) {
    return Album.FOLDER.resolve(name().toLowerCase(Locale.ROOT).replace('_', '-') + ending);
  }
}

package blindlap.screen.plan;

import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What a helper does with a phrase: notes it, and types back the two words that are asked. */
public final class HelperTypes {
  private static final Pattern PLACE = Pattern.compile("([1-6])(?:st|nd|rd|th)");

  private HelperTypes() {}

  /** Reads the plan's names as signed, notes the phrase and types its words; answers the phrase. */
  public static String seals(CommitModel commit) {
    commit.sign();
    String phrase = commit.phrase().shownProperty().get();
    commit.phraseNoted();
    commit.phrase().typedProperty().set(words(commit.phrase().questionProperty().get(), phrase));
    commit.seal();
    return phrase;
  }

  /** The words of a phrase that a question asks for. */
  public static String words(String question, String phrase) {
    return PLACE
        .matcher(question)
        .results()
        .map(MatchResult::group)
        .map(place -> phrase.split(" ")[place.charAt(0) - '1'])
        .collect(Collectors.joining(" "));
  }
}

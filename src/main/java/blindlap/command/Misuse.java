package blindlap.command;

import blindlap.wording.day.Words;
import java.io.PrintWriter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * A command line that cannot be read gets one sentence: what is wrong, that nothing was done, and
 * where to read on. Usage stands in the help alone, where nobody has to look for the sentence.
 */
final class Misuse implements CommandLine.IParameterExceptionHandler {
  private static final Words WORDS = Words.of("usage");

  /** So many letters a near name has to begin with as typed. */
  private static final int ALIKE = 3;

  @Override
  public int handleParseException(CommandLine.ParameterException wrong, String[] args) {
    PrintWriter err = wrong.getCommandLine().getErr();
    err.println(sentence(wrong, List.of(args)));
    err.flush();
    return ExitCode.BAD_INPUT;
  }

  private static String sentence(CommandLine.ParameterException wrong, List<String> typed) {
    String command = wrong.getCommandLine().getCommandSpec().qualifiedName();
    if (wrong instanceof CommandLine.UnmatchedArgumentException unmatched) {
      return unmatched(command, unmatched);
    }
    if (wrong instanceof CommandLine.MutuallyExclusiveArgsException) {
      return WORDS.say("one.of", command, choices(wrong));
    }
    if (wrong instanceof CommandLine.MissingParameterException missing) {
      return missing(command, missing, typed);
    }
    if (wrong instanceof CommandLine.OverwrittenOptionException twice) {
      return WORDS.say("twice", command, name(twice.getOverwritten()));
    }
    ArgSpec argument = wrong.getArgSpec();
    if (argument == null) {
      // What a command found wrong itself is a sentence already.
      String said = wrong.getMessage();
      return said != null && wrong.getClass() == CommandLine.ParameterException.class
          ? said
          : WORDS.say("other", command);
    }
    return value(command, argument, Optional.ofNullable(wrong.getValue()).orElse(""));
  }

  private static String unmatched(
      String command, CommandLine.UnmatchedArgumentException unmatched) {
    String typed = unmatched.getUnmatched().get(0);
    boolean option = unmatched.isUnknownOption() || typed.startsWith("-");
    boolean known = !option && unmatched.getCommandLine().getSubcommands().isEmpty();
    if (known) {
      return WORDS.say("more", command, typed);
    }
    String what = option ? "option" : "command";
    return near(typed, unmatched.getSuggestions())
        .map(near -> WORDS.say(what, command, typed, near))
        .orElseGet(() -> WORDS.say(what + ".none", command, typed));
  }

  private static Optional<String> near(String typed, List<String> names) {
    String begins = letters(typed);
    return names.stream()
        .map(name -> name.substring(name.lastIndexOf(' ') + 1))
        .filter(name -> begins.length() >= ALIKE && letters(name).startsWith(begins(begins)))
        .findFirst();
  }

  private static String begins(String letters) {
    return letters.substring(0, ALIKE);
  }

  private static String letters(String name) {
    return name.replace("-", "").toLowerCase(Locale.ROOT);
  }

  private static String missing(
      String command, CommandLine.MissingParameterException missing, List<String> typed) {
    List<ArgSpec> all = missing.getMissing();
    ArgSpec one = missing.getArgSpec();
    if (all.isEmpty()) {
      return one == null
          ? WORDS.say("one.of", command, choices(missing))
          : WORDS.say("missing.value", command, name(one), one.paramLabel());
    }
    if (all.get(0).group() != null && all.get(0).group().exclusive()) {
      return WORDS.say("one.of", command, choices(missing));
    }
    ArgSpec first = all.get(0);
    if (all.size() == 1 && first instanceof OptionSpec && typed.contains(name(first))) {
      return WORDS.say("missing.value", command, name(first), first.paramLabel());
    }
    List<String> names =
        all.stream()
            .map(
                each ->
                    each instanceof OptionSpec ? name(each) + " " + each.paramLabel() : name(each))
            .toList();
    int last = names.size() - 1;
    String list =
        last == 0
            ? names.get(0)
            : String.join(", ", names.subList(0, last)) + WORDS.say("and") + names.get(last);
    return WORDS.say("missing", command, list);
  }

  /** The options of which one is asked for. */
  private static String choices(CommandLine.ParameterException wrong) {
    return wrong.getCommandLine().getCommandSpec().argGroups().stream()
        .flatMap(group -> group.args().stream())
        .map(Misuse::name)
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private static String value(String command, ArgSpec argument, String typed) {
    Class<?> type = argument.type();
    if (type == int.class || type == Integer.class) {
      return WORDS.say("whole", command, name(argument), typed);
    }
    if (type == boolean.class || type == Boolean.class) {
      return WORDS.say("flag", command, name(argument), typed);
    }
    if (type.isEnum()) {
      String names =
          Arrays.stream(type.getEnumConstants())
              .map(Object::toString)
              .collect(Collectors.joining(", "));
      return WORDS.say("choice", command, name(argument), typed, names);
    }
    return WORDS.say("value", command, name(argument), typed);
  }

  private static String name(ArgSpec argument) {
    return argument instanceof PositionalParamSpec
        ? argument.paramLabel()
        : ((OptionSpec) argument).longestName();
  }
}

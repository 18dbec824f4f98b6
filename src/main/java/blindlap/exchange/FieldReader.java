package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.PlanFault;
import blindlap.plan.PlanJson;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the fields of one object of a plan or protocol file and collects what is wrong instead of
 * stopping at the first mistake. A field that was not asked for is a mistake too. Numbers of a file
 * are read as people type them, those of a stored plan only in the form that is written.
 */
final class FieldReader {
  private static final Pattern DECIMAL = Pattern.compile("[+-]?[0-9]{1,15}([.][0-9]{1,12})?");

  private static final Pattern INTEGER = Pattern.compile("[+-]?[0-9]{1,9}");

  /** Beyond the whole numbers that plan.schema.json admits. */
  private static final int MOST_WHOLE = 1_000_000_000;

  private final String path;
  private final Map<String, Located> fields;
  private final Located place;
  private final List<Problem> problems;
  private final boolean typed;
  private final Set<String> asked = new HashSet<>();

  /** Fields that somebody typed. */
  FieldReader(String path, Located object, List<Problem> problems) {
    this(path, object, problems, true);
  }

  /**
   * @param typed false for a stored plan
   */
  FieldReader(String path, Located object, List<Problem> problems, boolean typed) {
    this.typed = typed;
    this.path = path;
    this.place = object;
    this.problems = problems;
    Map<String, Located> known = object.fields();
    if (known == null) {
      problems.add(
          Problem.of(
              PlanFault.WRONG_VALUE, where(path, object), shown(object), FieldWords.FIELDS.say()));
      known = Map.of();
    }
    this.fields = known;
  }

  static String where(String path, Located at) {
    String lineAndColumn = "line " + at.line() + ", column " + at.column();
    return path.isEmpty() ? lineAndColumn : path + " (" + lineAndColumn + ")";
  }

  private static String shown(Located value) {
    if (value.text() != null) {
      return "\"" + value.text() + "\"";
    }
    return (value.isNull()
            ? FieldWords.FOUND_NOTHING
            : value.items() != null ? FieldWords.FOUND_LIST : FieldWords.FOUND_OBJECT)
        .say();
  }

  String path(String name) {
    return path.isEmpty() ? name : path + "." + name;
  }

  /** The value of a field; null if absent or null. */
  @Nullable Located value(String name) {
    asked.add(name);
    Located value = fields.get(name);
    return value == null || value.isNull() ? null : value;
  }

  /** The value of a field that must be there. */
  @Nullable Located required(String name) {
    Located value = value(name);
    if (value == null) {
      problems.add(Problem.of(PlanFault.MISSING_FIELD, where(path(name), place)));
    }
    return value;
  }

  void wrong(String name, Located value, String expected) {
    problems.add(
        Problem.of(PlanFault.WRONG_VALUE, where(path(name), value), shown(value), expected));
  }

  /** A text, or what stands for it if absent. */
  String text(String name, String otherwise) {
    Located value = value(name);
    if (value == null) {
      return otherwise;
    }
    if (value.text() == null) {
      wrong(name, value, FieldWords.TEXT.say());
      return otherwise;
    }
    return value.text().strip();
  }

  /** A text that must be there and not blank. */
  String requiredText(String name) {
    Located value = required(name);
    if (value == null) {
      return "";
    }
    if (value.text() == null || value.text().isBlank()) {
      wrong(name, value, FieldWords.TEXT.say());
      return "";
    }
    return value.text().strip();
  }

  private <T> @Nullable T scalar(String name, String expected, Function<String, T> parse) {
    Located value = value(name);
    if (value == null) {
      return null;
    }
    if (value.text() != null) {
      try {
        return parse.apply(value.text().strip());
      } catch (RuntimeException notOfThisForm) {
        // Falls through to the message below: the field says what it expects.
      }
    }
    wrong(name, value, expected);
    return null;
  }

  @Nullable BigDecimal decimal(String name) {
    return number(name, FieldWords.NUMBER.say(), FieldReader::storedDecimal);
  }

  /** A share of a whole. */
  @Nullable Double share(String name) {
    BigDecimal share = number(name, FieldWords.SHARE.say(), BigDecimal::new);
    return share == null ? null : share.doubleValue();
  }

  private @Nullable BigDecimal number(
      String name, String expected, Function<String, BigDecimal> stored) {
    if (!typed) {
      return scalar(name, expected, stored);
    }
    return scalar(name, signed(name, expected), each -> TypedNumber.number(each).orElseThrow());
  }

  /** What is expected, or that one sign is where two were typed. */
  private String signed(String name, String expected) {
    Located value = value(name);
    String text = value == null ? null : value.text();
    return text != null && TypedNumber.twoSigns(text) ? FieldWords.ONE_SIGN.say() : expected;
  }

  BigDecimal decimal(String name, String otherwise) {
    BigDecimal value = decimal(name);
    return value == null ? new BigDecimal(otherwise) : value;
  }

  private static BigDecimal storedDecimal(String text) {
    if (!DECIMAL.matcher(text).matches()) {
      throw new NumberFormatException("not a plain decimal number");
    }
    return new BigDecimal(text);
  }

  private Integer integerOf(String text) {
    if (typed) {
      return TypedNumber.whole(text).filter(n -> Math.abs(n) < MOST_WHOLE).orElseThrow();
    }
    if (!INTEGER.matcher(text).matches()) {
      throw new NumberFormatException("not a whole number");
    }
    return Integer.valueOf(text);
  }

  @Nullable Integer integer(String name) {
    String expected = FieldWords.WHOLE_NUMBER.say();
    return scalar(name, typed ? signed(name, expected) : expected, this::integerOf);
  }

  int integer(String name, int otherwise) {
    Integer value = integer(name);
    return value == null ? otherwise : value;
  }

  boolean bool(String name, boolean otherwise) {
    Boolean value =
        scalar(
            name,
            FieldWords.YES_OR_NO.say(),
            text ->
                switch (text.toLowerCase(java.util.Locale.ROOT)) {
                  case "true", "yes" -> true;
                  case "false", "no" -> false;
                  default -> throw new IllegalArgumentException();
                });
    return value == null ? otherwise : value;
  }

  <T> @Nullable T parsed(String name, String expected, Function<String, T> parse) {
    return scalar(name, expected, parse);
  }

  <E extends Enum<E>> E option(String name, Class<E> options, E otherwise) {
    List<String> words = PlanJson.words(options);
    E value =
        scalar(
            name,
            FieldWords.ONE_OF.say(String.join(", ", words)),
            text -> {
              int at =
                  words.indexOf(text.toLowerCase(java.util.Locale.ROOT).replaceAll("[-_]", " "));
              return options.getEnumConstants()[at];
            });
    return value == null ? otherwise : value;
  }

  /** Items of a list; none if absent. */
  List<Located> items(String name) {
    Located value = value(name);
    if (value == null) {
      return List.of();
    }
    if (value.items() == null) {
      wrong(name, value, FieldWords.LIST.say());
      return List.of();
    }
    return value.items();
  }

  List<String> texts(String name) {
    List<String> texts = new ArrayList<>();
    for (Located item : items(name)) {
      if (item.text() == null) {
        wrong(name, item, FieldWords.LIST_OF_TEXTS.say());
      } else {
        texts.add(item.text().strip());
      }
    }
    return texts;
  }

  List<Integer> integers(String name) {
    List<Integer> numbers = new ArrayList<>();
    for (Located item : items(name)) {
      try {
        numbers.add(integerOf(String.valueOf(item.text())));
      } catch (NumberFormatException | NoSuchElementException e) {
        wrong(name, item, FieldWords.LIST_OF_WHOLE_NUMBERS.say());
      }
    }
    return numbers;
  }

  /** Whole numbers, as a list or as one text that parts them by commas or spaces. */
  List<Integer> wholes(String name, String expected) {
    Located value = value(name);
    if (value == null || value.items() != null) {
      return integers(name);
    }
    List<Integer> numbers =
        scalar(
            name,
            expected,
            text ->
                java.util.Arrays.stream(text.split("[\\s,;]+", -1))
                    .filter(each -> !each.isEmpty())
                    .map(this::integerOf)
                    .toList());
    return numbers == null ? List.of() : numbers;
  }

  /**
   * Texts, as a list or as one text that parts them by semicolons, spaces, or commas before one.
   */
  List<String> parted(String name, String expected) {
    Located value = value(name);
    if (value == null || value.items() != null) {
      return texts(name);
    }
    List<String> parts = scalar(name, expected, FieldReader::parts);
    return parts == null ? List.of() : parts;
  }

  /** "4, 7, 10", "4 7 10" and "1,5; 1,6": a comma between digits is a decimal one. */
  private static List<String> parts(String text) {
    return java.util.Arrays.stream(text.split("\\s*;\\s*|\\s*,\\s+|\\s+", -1))
        .map(String::strip)
        .filter(each -> !each.isEmpty())
        .toList();
  }

  /** Objects of a list, each read by a function. */
  <T> List<T> objects(String name, Function<FieldReader, T> read) {
    List<T> objects = new ArrayList<>();
    List<Located> items = items(name);
    for (int i = 0; i < items.size(); i++) {
      FieldReader reader =
          new FieldReader(path(name) + "[" + (i + 1) + "]", items.get(i), problems, typed);
      objects.add(read.apply(reader));
      reader.end();
    }
    return objects;
  }

  /** An object, or null if absent. */
  <T> @Nullable T object(String name, Function<FieldReader, T> read) {
    Located value = value(name);
    if (value == null) {
      return null;
    }
    FieldReader reader = new FieldReader(path(name), value, problems, typed);
    T object = read.apply(reader);
    reader.end();
    return object;
  }

  /** Names the fields that nobody asked for. */
  void end() {
    for (Map.Entry<String, Located> field : fields.entrySet()) {
      if (!asked.contains(field.getKey())) {
        String known = String.join(", ", asked.stream().sorted().toList());
        problems.add(
            Problem.of(
                PlanFault.UNKNOWN_FIELD,
                where(path(field.getKey()), field.getValue()),
                field.getKey(),
                known));
      }
    }
  }
}

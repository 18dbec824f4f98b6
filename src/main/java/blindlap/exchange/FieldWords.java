package blindlap.exchange;

import blindlap.wording.day.Words;

/** What a field of a file takes, or was found to hold, in words of the bundle. */
enum FieldWords {
  TEXT,
  NUMBER,
  /** A number was typed with two signs. */
  ONE_SIGN,
  WHOLE_NUMBER,
  YES_OR_NO,
  /** {0} the words it takes. */
  ONE_OF,
  /** {0} the only text it takes. */
  ONLY,
  LIST,
  LIST_OF_TEXTS,
  LIST_OF_WHOLE_NUMBERS,
  FIELDS,
  DATE,
  START,
  DAYLIGHT_END,
  ZONE,
  SHARE,
  PRACTISED,
  STINT_SHARE,
  LOOKS,
  LEVELS,
  MASS,
  /** {0} grams. */
  SAME_GRAMS,
  /** {0} noise. */
  SAME_NOISE,
  FOUND_NOTHING,
  FOUND_LIST,
  FOUND_OBJECT,
  EMPTY_FILE,
  SECOND_DOCUMENT,
  NOT_YAML,
  NAME_WANTED,
  TAB,
  SECOND_COLON,
  NO_COLON,
  OPEN_QUOTE,
  OPEN_BRACKET,
  INDENT,
  TOO_DEEP,
  /** {0} field. */
  FIELD_TWICE,
  HALF_CHARACTER,
  NO_FIELDS;

  private static final Words WORDS = Words.of("problems");

  String say(Object... arguments) {
    return WORDS.say("field." + name(), arguments);
  }
}

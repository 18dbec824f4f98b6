package blindlap.fault;

/** What is wrong with a text that comes in. Details are listed in their order. */
public enum TextFault implements Fault {
  /** A file's bytes are not UTF-8. */
  NOT_UTF8,
  /** A file is larger than it may be: its size and the most, both in bytes. */
  FILE_TOO_LARGE,
  /** A control character: its code, its place in the text. */
  CONTROL,
  /** A code that stands for no character, or half of one: its code, its place in the text. */
  NO_CHARACTER,
  /** A line break where one line is wanted: its place in the text. */
  LINE_BREAK,
  /** Too many characters: the most. */
  TOO_LONG
}

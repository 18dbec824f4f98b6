package blindlap.phone;

/** What answers a phone: the rules alone, or the program itself. Entries outlive its memory. */
interface Laptop {
  /** An answer as it travels. */
  record Answer(int status, String body) {}

  /** How the day stands. */
  Answer state(String client, int unsent);

  /** A message, as it was sent. */
  Answer send(String client, String message);

  /** The program was ended or killed, and started again. */
  void startAgain();
}

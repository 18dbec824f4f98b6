package blindlap.fault;

/** Why a rule gives no orders to draw from. Details are listed in their order. */
public enum RuleFault implements Fault {
  /** The stints are no multiple of the block: stints, block. */
  BLOCK_DOES_NOT_DIVIDE,
  /** A block cannot hold the setups equally often: block, setups. */
  BLOCK_UNBALANCED,
  /** The longest run is below 1. */
  RUN_BELOW_ONE,
  /** A least trend efficiency with other than two setups. */
  TREND_NEEDS_TWO_SETUPS,
  /** A least trend efficiency outside 0 to 1. */
  TREND_RANGE,
  /** A pattern is not written with capital letters: pattern, place of the wrong letter. */
  NOT_LETTERS,
  /** A pattern is no block with every setup equally often: pattern, block. */
  PATTERN_UNBALANCED,
  /** The rule has too many restrictions to count its orders. */
  TOO_LARGE,
  /** No order satisfies the rule. */
  NO_ORDER,
  /** Renaming the setups leads to orders that the rule does not admit. */
  NOT_CLOSED
}

package blindlap.seal;

import blindlap.fault.Fault;

/** Why no order was drawn; nothing is committed then. Details are listed in their order. */
public enum DrawFault implements Fault {
  /** No order satisfies the rule. */
  NO_ORDER,
  /** Too few shuffles satisfy the rule to find one by trying: how many do, how many there are. */
  TOO_FEW_ORDERS,
  /** None came up although enough are admissible: number of tries. */
  NONE_CAME_UP,
  /**
   * The null run is to ride a setup that the plan does not have: its number, setups of the plan.
   */
  NO_SUCH_SETUP
}

package blindlap.phone;

import blindlap.fault.Fault;

/** What keeps phones from being switched on, or one of them from being found. */
public enum SwitchFault implements Fault {
  /** The day is closed. */
  DAY_OVER,
  /** This machine is on no network: nothing but its own address. */
  NO_NETWORK,
  /** It is on several networks, and none was chosen: their addresses. */
  SEVERAL_ADDRESSES,
  /** It has no such address: typed, what it has. */
  NO_SUCH_ADDRESS,
  /** No port: typed. */
  PORT,
  /** Something else is served at this port: address, port. */
  PORT_TAKEN,
  /** Nothing can be served there: address, port. */
  NOT_SERVED,
  /** No phone, or more than one, has an id that begins so: typed. */
  NO_SUCH_PHONE
}

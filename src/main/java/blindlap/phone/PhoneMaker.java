package blindlap.phone;

import blindlap.session.day.SessionId;
import java.util.List;

/** Where phones come from: filled in where clock, secure source and networks are known. */
public interface PhoneMaker {
  /** The addresses of this machine at which pages can be served, the likeliest first. */
  List<PhoneAddress> addresses();

  /** The phones of a session, switched off; those that were let in before are known. */
  Phones phones(SessionId session);
}

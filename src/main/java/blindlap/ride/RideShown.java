package blindlap.ride;

import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.VoidEvent;
import java.util.SortedMap;

/** What a page on any surface shows of the rider's day; it decides nothing. */
public abstract class RideShown {
  /** Shows what is asked now. */
  protected abstract void shows(RideSheet now);

  /** Shows what is still open on the sheet, in words. */
  protected abstract void showsOpen(String words);

  /** Shows "Saved 11:44:07", once the disk has it. */
  protected abstract void showsSaved(String words);

  /** Shows one sentence if something was refused; else nothing. */
  protected abstract void showsTrouble(String words);

  /** Shows what an event does to the result. */
  protected abstract void says(String words);

  /** Shows whether an answer is on its way: what is shown is then ahead of what is on record. */
  protected abstract void showsSaving(boolean now);

  /** Offers to take the last answer back: its name, or empty if none can be. */
  protected abstract void offersToTakeBack(String what);

  /** Shows which laps are void by which event, as far as a void can still be taken back. */
  protected abstract void showsVoids(SortedMap<LapId, VoidEvent> voids);

  /** Asks whether the rider is done though something is open; empty to ask no more. */
  protected abstract void asksWhetherDone(String words);

  /** A session is opened: whatever was said of another one goes. */
  protected abstract void opened(SessionId session);
}

package blindlap.desk;

import blindlap.paper.AloneSheet;
import blindlap.paper.HelperSheet;
import blindlap.paper.OneStintSlips;
import blindlap.paper.TimetableSheet;
import blindlap.paper.ride.ByCodeSheet;
import blindlap.paper.ride.LabelSheet;
import blindlap.paper.ride.QuickStartSheet;
import blindlap.paper.ride.RiderSheets;
import blindlap.paper.ride.StarterSheet;
import blindlap.paper.sheet.SheetFormat;
import blindlap.plan.BlindLevel;
import blindlap.session.AloneCommands;
import blindlap.session.SessionState;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Sheets to print for the day, as PDF files by name. */
public final class Sheets {
  /** Paper. */
  public enum Paper {
    A4,
    LETTER
  }

  private static SheetFormat format(Paper paper) {
    return paper == Paper.A4 ? SheetFormat.A4 : SheetFormat.LETTER;
  }

  /**
   * What rider and starter may see: score sheets, starter's sheet, timetable; of a day without a
   * helper what the rider mounts by, and labels for covered parts; what is scored later by code.
   */
  public Map<String, byte[]> open(SessionState state, Paper paper) {
    Map<String, byte[]> sheets = new LinkedHashMap<>();
    sheets.put("score-sheets.pdf", RiderSheets.pdf(state.day(), format(paper)));
    sheets.put("starter-sheet.pdf", StarterSheet.pdf(state.day(), format(paper)));
    sheets.put("timetable.pdf", TimetableSheet.pdf(state.plan(), format(paper)));
    if (AloneCommands.alone(state)) {
      sheets.put("mount-sheet.pdf", AloneSheet.pdf(state, format(paper)));
    }
    if (state.plan().blinding().level() == BlindLevel.PREPARED) {
      sheets.put("labels.pdf", LabelSheet.pdf(state.day(), format(paper)));
    }
    List<String> assessors = state.plan().assessors();
    for (int i = 0; i < assessors.size(); i++) {
      String name = assessors.size() == 1 ? "by-code.pdf" : "by-code-" + (i + 1) + ".pdf";
      sheets.put(name, ByCodeSheet.pdf(state.day(), assessors.get(i), format(paper)));
    }
    return sheets;
  }

  /**
   * The helper's sheet; holds the key.
   *
   * @param phrase as typed; printed on the sheet
   */
  public byte[] helper(SessionState state, Keys.Result.Open open, String phrase, Paper paper) {
    return HelperSheet.pdf(state, open.schedule(), open.sheet(), phrase.strip(), format(paper));
  }

  /** One page for a helper who has never seen the program; it is of no session. */
  public byte[] quickStart(Paper paper) {
    return QuickStartSheet.pdf(format(paper));
  }

  /** Slips for one stint each; they hold no setup, and the words that open one. */
  public byte[] oneStint(SessionState state, List<OneStints.Slip> slips, Paper paper) {
    List<OneStintSlips.Slip> all =
        slips.stream().map(s -> new OneStintSlips.Slip(s.stint(), s.code(), s.words())).toList();
    return OneStintSlips.pdf(state.plan(), all, format(paper));
  }
}

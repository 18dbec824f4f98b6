package blindlap.exchange;

import blindlap.plan.PlanJson;
import blindlap.plan.Sector;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.RecordingVisitor;
import blindlap.session.SectorVoidWithdrawn;
import blindlap.session.SectorVoided;
import blindlap.session.day.LapId;
import java.util.LinkedHashMap;
import java.util.Map;

/** The bodies of what recordings say of a day. */
final class RecordingWriter implements RecordingVisitor<Map<String, Object>> {
  @Override
  public Map<String, Object> recordingBroughtIn(RecordingBroughtIn fact) {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put("file", fact.file());
    body.put("sha256", fact.sha256());
    body.put("trail", fact.trail());
    body.put("offset", PlanJson.number(fact.offset()));
    body.put("borders", fact.borders().stream().map(PlanJson::number).toList());
    body.put("laps", fact.laps().stream().map(RecordingWriter::lap).toList());
    return body;
  }

  private static Map<String, Object> lap(RecordedLap lap) {
    Map<String, Object> body = place(lap.lap());
    body.put("passes", lap.passes().stream().map(RecordingWriter::pass).toList());
    body.put("pieces", lap.pieces().stream().map(PlanJson::number).toList());
    if (lap.positions() != null) {
      body.put("positions", lap.positions());
    }
    body.put("settled", PlanJson.word(lap.settled()));
    return body;
  }

  private static Map<String, Object> pass(RecordedPass pass) {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put("seconds", PlanJson.number(pass.seconds()));
    body.put("uncertainty", PlanJson.number(pass.uncertainty()));
    RecordedPass.Doubt doubt = pass.doubtful();
    if (doubt != null) {
      body.put("doubtful", PlanJson.word(doubt));
    }
    return body;
  }

  @Override
  public Map<String, Object> sectorVoided(SectorVoided fact) {
    Map<String, Object> body = place(fact.lap());
    sector(body, fact.sector());
    body.put("event", fact.event().text());
    body.put("words", fact.words());
    body.put("after_values_seen", fact.afterValuesSeen());
    return body;
  }

  @Override
  public Map<String, Object> sectorVoidWithdrawn(SectorVoidWithdrawn fact) {
    Map<String, Object> body = place(fact.lap());
    sector(body, fact.sector());
    body.put("reason", fact.reason());
    return body;
  }

  private static void sector(Map<String, Object> body, Sector sector) {
    body.put("from", sector.from());
    body.put("to", sector.to());
  }

  private static Map<String, Object> place(LapId lap) {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put("stint", String.valueOf(lap.stint()));
    body.put("lap", String.valueOf(lap.lap()));
    return body;
  }
}

package blindlap.compute;

import blindlap.plan.PlanJson;
import blindlap.review.Finding;
import blindlap.review.WhereOnTrail;
import blindlap.stats.compare.Along;
import blindlap.stats.distribution.Interval;
import blindlap.wording.WhereWords;
import blindlap.wording.day.Problems;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/** Where on the trail the difference arises, as JSON; nothing where nothing was recorded. */
final class WhereJson {
  private final WhereOnTrail where;
  private final WhereWords words;

  private WhereJson(WhereOnTrail where, WhereWords words) {
    this.where = where;
    this.words = words;
  }

  static void put(ObjectNode root, Finding finding) {
    finding
        .where()
        .ifPresent(
            where ->
                new WhereJson(where, WhereWords.of(finding).orElseThrow())
                    .put(root.putObject("where")));
  }

  private void put(ObjectNode node) {
    node.put("sentence", words.headline());
    node.put("declared", where.declared());
    node.put("tested", where.tested());
    where.why().ifPresent(why -> node.put("why", Problems.sentence(why)));
    if (!where.compared()) {
      return;
    }
    node.put("drift", where.drift().text());
    node.put("summary", where.summary().text());
    ArrayNode caveats = node.putArray("caveats");
    where.caveats().forEach(caveat -> caveats.add(PlanJson.word(caveat)));
    where.line().ifPresent(line -> line(node.putObject("line"), line));
    where.sectors().ifPresent(sectors -> sectors(node, sectors));
  }

  private void line(ObjectNode node, WhereOnTrail.Line line) {
    node.put("stints", line.used());
    numbers(node.putArray("borders"), line.borders());
    ArrayNode gates = node.putArray("gates");
    for (int gate = 0; gate < line.gates().length; gate++) {
      ObjectNode each = gates.addObject().put("gate", gate + 1).put("name", name(gate));
      number(each, "metres", line.gates()[gate]);
    }
    band(node, line.along().pieces());
    if (where.tested() && !where.lineMissing()) {
      numbers(node.putArray("p_adjusted"), line.along().pAdjusted());
    } else {
      node.putNull("p_adjusted");
    }
    band(node.putObject("cumulative"), line.along().cumulative());
  }

  /** Gates of a trail that the plan did not name have none. */
  private @Nullable String name(int gate) {
    return where.declared() ? words.gate(gate) : null;
  }

  private static void band(ObjectNode node, Along.Band band) {
    numbers(node.putArray("estimates"), band.estimates());
    numbers(node.putArray("half_widths_95"), band.halfWidths());
  }

  private void sectors(ObjectNode node, WhereOnTrail.Sectors sectors) {
    node.put("adjusted_by", PlanJson.word(sectors.method()));
    node.put("intervals_together", sectors.together());
    ArrayNode all = node.putArray("sectors");
    for (WhereOnTrail.OfSector sector : sectors.each()) {
      ObjectNode each = all.addObject();
      each.put("sector", sector.sector() + 1);
      each.put("from", name(sector.sector()));
      each.put("to", name(sector.sector() + 1));
      each.put("stints", sector.used());
      number(each, "estimate", sector.estimate());
      interval(each, sector);
      number(each, "p_adjusted", sector.p().orElse(Double.NaN));
      number(each, "recorder_sd", sector.uncertainty());
    }
  }

  private static void interval(ObjectNode node, WhereOnTrail.OfSector sector) {
    if (sector.interval().isEmpty()) {
      node.putNull("interval_95");
      return;
    }
    Interval interval = sector.interval().get();
    numbers(node.putArray("interval_95"), interval.low(), interval.high());
  }

  private static void numbers(ArrayNode node, double... numbers) {
    for (double number : numbers) {
      if (Double.isFinite(number)) {
        node.add(number);
      } else {
        node.addNull();
      }
    }
  }

  private static void number(ObjectNode node, String name, double number) {
    if (Double.isFinite(number)) {
      node.put(name, number);
    } else {
      node.putNull(name);
    }
  }
}

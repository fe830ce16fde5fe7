package io.github.tiderule.format.json;

import io.github.tiderule.engine.advice.StudPlan;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;

/** How one stud's services are shared as a JSON document, schema {@code tiderule/stud/1}. */
public final class StudJson {

  /** The name and version of the document. */
  public static final String SCHEMA = "tiderule/stud/1";

  private static final int SHARE_DECIMALS = 4;

  private StudJson() {}

  /**
   * The document, with a line feed at its end.
   *
   * @param zone the zone instants are written in
   */
  public static String text(StudPlan plan, ZoneId zone, Layout layout) {
    return Document.text(
        layout,
        json ->
            json.text("schema", SCHEMA)
                .figure("total", plan.total(), SHARE_DECIMALS)
                .objects(
                    "services",
                    plan.services(),
                    service ->
                        json.instant("at", offset(service.at(), zone))
                            .text("femaleId", service.female())
                            .figure("adds", service.adds(), SHARE_DECIMALS))
                .objects("females", plan.parts(), part -> part(json, part, zone))
                .objects(
                    "leftOut",
                    plan.leftOut(),
                    left ->
                        json.text("femaleId", left.female())
                            .text("instead", left.instead().toString())));
  }

  private static void part(Document json, StudPlan.Part part, ZoneId zone) {
    json.text("femaleId", part.female())
        .instants("at", part.at().stream().map(at -> offset(at, zone)).toList())
        .figure("eggShare", part.share(), SHARE_DECIMALS)
        .figure("lostByWaiting", part.lostByWaiting(), SHARE_DECIMALS)
        .figures("alone", part.alone(), SHARE_DECIMALS);
  }

  private static OffsetDateTime offset(Instant at, ZoneId zone) {
    return at.atZone(zone).toOffsetDateTime();
  }
}

package io.github.tiderule.format.json;

import io.github.tiderule.engine.Accuracy;
import io.github.tiderule.engine.WhelpedSeason;
import java.util.List;

/** How well past whelpings were foretold as a JSON document, schema {@code tiderule/accuracy/1}. */
public final class AccuracyJson {

  /** The name and version of the document. */
  public static final String SCHEMA = "tiderule/accuracy/1";

  private static final int DAY_DECIMALS = 1;
  private static final int SHARE_DECIMALS = 4;

  private AccuracyJson() {}

  /**
   * The document, with a line feed at its end.
   *
   * @param others seasons read that have no whelping to compare
   */
  public static String text(List<WhelpedSeason> seasons, int others, Layout layout) {
    Accuracy all = WhelpedSeason.accuracy(seasons);
    return Document.text(
        layout,
        json ->
            json.text("schema", SCHEMA)
                .objects(
                    "seasons",
                    seasons,
                    season ->
                        json.text("female", season.female())
                            .day("whelpedOn", season.lookBack().whelpedOn())
                            .instant("median", season.lookBack().median())
                            .instant("p05", season.lookBack().p05())
                            .instant("p95", season.lookBack().p95())
                            .figure("errorDays", season.lookBack().errorDays(), DAY_DECIMALS)
                            .flag("within", season.lookBack().within()))
                .whole("others", others)
                .whole("count", all.seasons())
                .figure("medianDays", all.medianDays(), DAY_DECIMALS)
                .figure("p90Days", all.p90Days(), DAY_DECIMALS)
                .figure("biasDays", all.biasDays(), DAY_DECIMALS)
                .figure("within", all.within(), SHARE_DECIMALS)
                .figure("withinLow", all.withinLow(), SHARE_DECIMALS)
                .figure("withinHigh", all.withinHigh(), SHARE_DECIMALS)
                .flag("few", all.few()));
  }
}

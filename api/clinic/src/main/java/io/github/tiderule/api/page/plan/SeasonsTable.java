package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.picture.SeasonsOverlay;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.rules.fact.assay.Unit;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The seasons of a female beside each other, read from the record and the advice on file.
 *
 * @param rows the latest season first
 * @param phone the seasons laid over each other by ovulation, for narrow windows; absent where
 *     there are fewer than two to compare
 * @param screen the same for others
 * @param next when her next season is expected; absent where the advice on file does not say
 */
public record SeasonsTable(
    List<Row> rows, @Nullable String phone, @Nullable String screen, @Nullable String next) {

  private static final int MOST_DRAWN = 7;
  private static final double HOURS = 24;

  /**
   * A season.
   *
   * @param ovulated the day, with how many days after first blood; empty where it is not known
   * @param level progesterone nearest to ovulation; empty where there is none
   * @param bred days after ovulation she was bred on
   * @param litter how it ended
   * @param off how far the forecast of a week before whelping was off
   */
  public record Row(
      String key,
      String firstBlood,
      int entries,
      String ovulated,
      String level,
      String bred,
      String litter,
      String off) {}

  /** A value of hers. */
  private record Value(OffsetDateTime at, double ngPerMl, String words) {}

  /** Her seasons. */
  public static SeasonsTable of(Ledger ledger, List<Cycle> cycles, Texts texts, Words words) {
    List<Row> rows = new ArrayList<>();
    List<SeasonsOverlay.Season> drawn = new ArrayList<>();
    String next = null;
    for (Cycle cycle : cycles) {
      Season season = new Season(ledger, cycle, texts, words);
      rows.add(season.row());
      if (season.ovulation != null && season.values.size() > 1 && drawn.size() < MOST_DRAWN) {
        drawn.add(season.drawn());
      }
      next = rows.size() == 1 ? season.next() : next;
    }
    boolean compared = drawn.size() > 1;
    return new SeasonsTable(
        List.copyOf(rows),
        compared ? SeasonsOverlay.of(drawn, words, CurveSize.PHONE).svg("laidphone") : null,
        compared ? SeasonsOverlay.of(drawn, words, CurveSize.SCREEN).svg("laidscreen") : null,
        next);
  }

  /** One season as it is read. */
  private static final class Season {

    private final Cycle cycle;
    private final Texts texts;
    private final Words words;
    private final ZoneId zone;
    private final Node.Members document;
    private final Node.@Nullable Members answer;
    private final int entries;
    private final List<Value> values = new ArrayList<>();
    private final List<OffsetDateTime> breedings = new ArrayList<>();
    private final @Nullable OffsetDateTime ovulation;

    Season(Ledger ledger, Cycle cycle, Texts texts, Words words) {
      this.cycle = cycle;
      this.texts = texts;
      this.words = words;
      this.zone = Documents.zone(cycle);
      this.document = Documents.of(cycle.document());
      List<GivenAdvice> given = ledger.advices().latest(cycle.key(), 1);
      this.answer = given.isEmpty() ? null : Documents.of(given.get(0).answer());
      List<Entry> current = ledger.entries().current(cycle.key());
      this.entries = current.size();
      current.forEach(entry -> read(Documents.of(Objects.requireNonNull(entry.document()))));
      values.sort(Comparator.comparing(Value::at));
      breedings.sort(Comparator.naturalOrder());
      String median = answer == null ? null : Documents.text(answer, "ovulation", "median");
      this.ovulation = median == null ? null : OffsetDateTime.parse(median);
    }

    private void read(Node.Members one) {
      OffsetDateTime at = Observed.at(one, zone);
      String kind = Objects.requireNonNull(Documents.text(one, "kind"));
      String value = Documents.text(one, "value");
      String unit = Documents.text(one, "unit");
      if (kind.equals("breeding")) {
        breedings.add(at);
      } else if (kind.equals("progesterone") && value != null && unit != null) {
        Unit stated =
            Arrays.stream(Unit.values())
                .filter(known -> known.word().equals(unit))
                .findFirst()
                .orElseThrow();
        values.add(
            new Value(
                at,
                stated.toNgPerMl(Double.parseDouble(value)),
                words.number(value) + " " + texts.word("unit", unit)));
      }
    }

    Row row() {
      return new Row(
          cycle.key(),
          Documents.firstBlood(cycle, texts, words),
          entries,
          ovulated(),
          level(),
          breedings.stream().map(this::bred).collect(Collectors.joining(", ")),
          litter(),
          off());
    }

    private String ovulated() {
      if (ovulation == null) {
        return "";
      }
      LocalDate day = ovulation.atZoneSameInstant(zone).toLocalDate();
      String blood = Documents.text(document, "firstBlood", "on");
      return blood == null
          ? words.shortDay(day)
          : texts.say(
              "female.table.ovulated.day",
              words.shortDay(day),
              // first blood is day 1
              ChronoUnit.DAYS.between(LocalDate.parse(blood), day) + 1);
    }

    private String level() {
      OffsetDateTime about = ovulation;
      return about == null
          ? ""
          : values.stream()
              .min(Comparator.comparing((Value value) -> Duration.between(about, value.at()).abs()))
              .map(Value::words)
              .orElse("");
    }

    private String bred(OffsetDateTime at) {
      LocalDate day = at.toLocalDate();
      if (ovulation == null) {
        return words.shortDay(day);
      }
      long after = ChronoUnit.DAYS.between(ovulation.atZoneSameInstant(zone).toLocalDate(), day);
      return words.number(after < 0 ? "-" + -after : Long.toString(after));
    }

    private String litter() {
      String size = Documents.text(document, "outcome", "litterSize");
      String on = Documents.text(document, "outcome", "whelpedOn");
      if (size != null) {
        return texts.count("female.table.pups", Long.parseLong(size));
      }
      if (on != null) {
        return texts.say("female.table.whelped", words.shortDay(LocalDate.parse(on)));
      }
      Node outcome = document.byKey().get("outcome");
      boolean empty =
          outcome instanceof Node.Members members
              && members.byKey().get("pregnant") instanceof Node.Flag flag
              && !flag.value();
      return empty ? texts.say("female.table.empty") : "";
    }

    private String off() {
      String error = answer == null ? null : Documents.text(answer, "lookBack", "errorDays");
      if (error == null) {
        return "";
      }
      double days = Double.parseDouble(error);
      return texts.say(
          days < 0 ? "female.table.earlier" : "female.table.later",
          words.number("%.1f", Math.abs(days)));
    }

    @Nullable String next() {
      Node.Members before = answer == null ? null : answer.members("beforeSeason");
      Node.Members next = before == null ? null : before.members("next");
      String expected = next == null ? null : next.text("expected");
      String from = next == null ? null : next.text("from");
      String to = next == null ? null : next.text("to");
      return expected == null || from == null || to == null
          ? null
          : texts.say(
              "female.next",
              words.day(LocalDate.parse(expected)),
              words.days(LocalDate.parse(from), LocalDate.parse(to)));
    }

    SeasonsOverlay.Season drawn() {
      OffsetDateTime about = Objects.requireNonNull(ovulation);
      return new SeasonsOverlay.Season(
          words.monthAndYear(about.toLocalDate()),
          values.stream()
              .map(
                  value ->
                      new SeasonsOverlay.Value(
                          Duration.between(about, value.at()).toMinutes() / (60 * HOURS),
                          value.ngPerMl()))
              .toList());
    }
  }
}

package io.github.tiderule.api.record;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.record.store.Address;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.api.record.store.Transfer;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.EarlierKind;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What one season of a female in the record tells the next. All of them are invented. */
class EarlierSeasonsTest {

  private static final Instant NOW = Instant.parse("2027-01-13T12:00:00Z");
  private static final Instant SUMMER = Instant.parse("2026-08-01T12:00:00Z");
  private static final LocalDate FIRST = LocalDate.of(2026, 5, 1);
  private static final LocalDate SHIFT = LocalDate.of(2026, 5, 21);
  private static final LocalDate WHELPED = LocalDate.of(2026, 7, 15);
  private static final String LITTER =
      "\"outcome\":{\"pregnant\":true,\"whelpedOn\":\"2026-07-15\",\"litterSize\":6}";

  @TempDir Path directory = Path.of("");
  private int records;

  private static String season(String on, String certainty, String rest) {
    return "{\"zone\":\"Europe/Vienna\",\"firstBlood\":{\"on\":\""
        + on
        + "\",\"certainty\":\""
        + certainty
        + "\"}"
        + (rest.isEmpty() ? "" : "," + rest)
        + "}";
  }

  private static String seen(String on, String rest) {
    return season(on, "seen", rest);
  }

  private static String smear(String id, String day, int cornified, String neutrophils) {
    return "{\"id\":\"%s\",\"kind\":\"cytology\",\"at\":\"%sT08:00:00+02:00\",\"cornifiedPercent\":%d,\"neutrophils\":\"%s\"}"
        .formatted(id, day, cornified, neutrophils);
  }

  private static String progesterone(String id, String day, String value) {
    return "{\"id\":\"%s\",\"kind\":\"progesterone\",\"at\":\"%sT08:00:00+02:00\",\"value\":%s,\"unit\":\"ng/mL\",\"method\":\"clia\"}"
        .formatted(id, day, value);
  }

  /** A record with one female and her seasons, in the order given. */
  private final class Kept implements AutoCloseable {

    private final Store store = Store.open(Address.of(directory.resolve("r" + records++) + ""));
    private Female her;
    private final List<Cycle> cycles = new ArrayList<>();

    Kept(String female, String... seasons) {
      store.change(
          ledger -> {
            People.of(ledger).local(NOW);
            return "";
          });
      her = store.change(ledger -> ledger.females().add(Person.LOCAL, "juniper", female, NOW));
      for (String season : seasons) {
        cycles.add(
            store.change(
                ledger ->
                    ledger
                        .cycles()
                        .add(
                            her.key(),
                            season,
                            season.contains("2026-05") ? SUMMER : null,
                            Person.LOCAL,
                            NOW)));
      }
    }

    Kept with(int season, String id, String observation) {
      store.change(
          ledger ->
              ledger
                  .entries()
                  .add(cycles.get(season).key(), id, observation, Person.LOCAL, SUMMER, NOW));
      return this;
    }

    String file(int season, Instant asOf) {
      return store.read(
          ledger ->
              EarlierSeasons.of(ledger, her)
                  .file(
                      asOf,
                      cycles.get(season),
                      ledger.entries().current(cycles.get(season).key())));
    }

    List<EarlierCycle> earlier(int season) {
      return earlier(season, NOW);
    }

    List<EarlierCycle> earlier(int season, Instant asOf) {
      Reading reading = CycleText.read(file(season, asOf));
      if (reading instanceof Reading.Read read) {
        return read.cycle().earlierCycles();
      }
      throw new AssertionError(reading.toString());
    }

    @Override
    public void close() {
      store.close();
    }
  }

  @Test
  void tellsShiftWhelpingAndLitter() {
    try (Kept kept = new Kept("{}", seen("2026-05-01", LITTER), seen("2027-01-03", ""))) {
      kept.with(0, "a", smear("a", "2026-05-20", 100, "none"))
          .with(0, "b", smear("b", "2026-05-21", 60, "few"));
      assertThat(
          kept.earlier(1), is(List.of(new EarlierCycle(FIRST, null, SHIFT, WHELPED, 6, true))));
      assertThat("nothing of later seasons", kept.earlier(0), hasSize(0));
      assertThat("same record, same file", kept.file(1, NOW), is(kept.file(1, NOW)));
    }
  }

  @Test
  void littersCountThemselvesWhereFewerWereTyped() {
    String before = seen("2026-05-01", LITTER);
    String now = seen("2027-01-03", "");
    try (Kept none = new Kept("{}", before, now);
        Kept fewer = new Kept("{\"littersWhelped\":0}", before, now);
        Kept more = new Kept("{\"littersWhelped\":3}", before, now)) {
      assertThat(none.file(1, NOW), containsString("\"littersWhelped\":1"));
      assertThat(fewer.file(1, NOW), containsString("\"littersWhelped\":1"));
      assertThat(more.file(1, NOW), containsString("\"littersWhelped\":3"));
      assertThat(none.file(0, NOW), not(containsString("littersWhelped")));
    }
  }

  @Test
  void theOrderOfEnteringDoesNotMatter() {
    String later = seen("2027-01-03", "");
    String middle = seen("2026-09-01", "");
    List<EarlierCycle> wanted =
        List.of(
            new EarlierCycle(FIRST, null, null, WHELPED, 6, true),
            new EarlierCycle(LocalDate.of(2026, 9, 1), null));
    try (Kept one = new Kept("{}", later, seen("2026-05-01", LITTER), middle);
        Kept other = new Kept("{}", later, middle, seen("2026-05-01", LITTER))) {
      assertThat(one.earlier(0), is(wanted));
      assertThat(other.earlier(0), is(wanted));
    }
  }

  @Test
  void aSeasonWhoseBeginningIsUnknownTellsNothing() {
    try (Kept kept =
        new Kept("{}", season("2026-05-01", "unknown", LITTER), seen("2027-01-03", ""))) {
      assertThat(kept.earlier(1), hasSize(0));
    }
  }

  /** Its days from first blood would be taken for exact. */
  @Test
  void aSeasonWhoseBeginningIsEstimatedTellsNoDaysAfterIt() {
    try (Kept kept =
        new Kept("{}", season("2026-05-01", "estimated", LITTER), seen("2027-01-03", ""))) {
      assertThat(kept.earlier(1), is(List.of(new EarlierCycle(FIRST, null, null, null, 6, true))));
    }
  }

  @Test
  void whatIsTypedWinsAndWhatItLacksIsFilledIn() {
    String typed =
        "{\"earlierCycles\":[{\"firstBloodOn\":\"2026-05-02\",\"ovulatedOn\":\"2026-05-14\",\"litterSize\":5}]}";
    try (Kept kept = new Kept(typed, seen("2026-05-01", LITTER), seen("2027-01-03", ""))) {
      assertThat(
          kept.earlier(1),
          is(
              List.of(
                  new EarlierCycle(
                      LocalDate.of(2026, 5, 2),
                      LocalDate.of(2026, 5, 14),
                      null,
                      WHELPED,
                      5,
                      true))));
    }
    String another = "{\"earlierCycles\":[{\"firstBloodOn\":\"2026-05-04\"}]}";
    try (Kept kept = new Kept(another, seen("2026-05-01", LITTER), seen("2027-01-03", ""))) {
      assertThat("three days apart are two seasons", kept.earlier(1), hasSize(2));
    }
  }

  @Test
  void whatContradictsTheTypedIsLeftOut() {
    String typed = "{\"earlierCycles\":[{\"firstBloodOn\":\"2026-05-01\",\"pregnant\":false}]}";
    try (Kept kept = new Kept(typed, seen("2026-05-01", LITTER), seen("2027-01-03", ""))) {
      assertThat(
          kept.earlier(1), is(List.of(new EarlierCycle(FIRST, null, null, null, null, false))));
    }
  }

  /** The reader refuses a shift more than ninety days after first blood. */
  @Test
  void whatTheReaderWouldRefuseIsLeftOutAlone() {
    try (Kept kept = new Kept("{}", seen("2026-05-01", LITTER), seen("2027-01-03", ""))) {
      kept.with(0, "a", smear("a", "2026-07-30", 100, "none"))
          .with(0, "b", smear("b", "2026-07-31", 40, "many"));
      assertThat(
          kept.earlier(1), is(List.of(new EarlierCycle(FIRST, null, null, WHELPED, 6, true))));
    }
  }

  @Test
  void nothingIsToldBeforeItHappened() {
    try (Kept kept = new Kept("{}", seen("2026-05-01", LITTER), seen("2026-06-20", ""))) {
      kept.with(0, "a", smear("a", "2026-05-20", 100, "none"))
          .with(0, "b", smear("b", "2026-05-21", 60, "few"));
      assertThat(
          "the whelping is after the next season began",
          kept.earlier(1),
          is(List.of(new EarlierCycle(FIRST, null, SHIFT, null, null, null))));
    }
    try (Kept kept =
        new Kept(
            "{}",
            seen("2026-05-01", LITTER),
            "{\"zone\":\"Europe/Vienna\",\"firstBlood\":{\"certainty\":\"unknown\"}}")) {
      assertThat(
          kept.earlier(1, Instant.parse("2026-07-15T12:00:00Z")),
          is(List.of(new EarlierCycle(FIRST, null))));
      assertThat(kept.earlier(1).get(0).whelpedOn(), is(WHELPED));
      assertThat(kept.earlier(1, Instant.parse("2026-04-30T12:00:00Z")), hasSize(0));
    }
  }

  @Test
  void aSeasonThatBrokeOffSaysSoAndIsNoneForTheInterval() {
    try (Kept stopped = new Kept("{}", seen("2026-05-01", ""), seen("2026-06-15", ""));
        Kept low = new Kept("{}", seen("2026-05-01", ""), seen("2026-06-15", ""));
        Kept late = new Kept("{}", seen("2026-05-01", ""), seen("2027-01-03", ""));
        Kept early = new Kept("{}", seen("2026-05-01", ""), seen("2026-06-15", ""))) {
      stopped
          .with(0, "p", progesterone("p", "2026-05-14", "0.8"))
          .with(
              0,
              "s",
              "{\"id\":\"s\",\"kind\":\"sign\",\"at\":\"2026-05-16T08:00:00+02:00\",\"sign\":\"bleeding-stops\",\"present\":true}");
      low.with(0, "p", progesterone("p", "2026-05-12", "2.4"))
          .with(0, "q", progesterone("q", "2026-05-16", "0.7"));
      late.with(0, "p", progesterone("p", "2026-05-14", "0.8"));
      early.with(0, "p", progesterone("p", "2026-05-06", "0.8"));
      assertThat(kind(stopped), is(EarlierKind.BROKEN_OFF));
      assertThat(kind(low), is(EarlierKind.BROKEN_OFF));
      assertThat("may have risen after the last test", kind(late), is(nullValue()));
      assertThat("tested too early to tell", kind(early), is(nullValue()));
    }
  }

  @Test
  void aRiseThatFellBackWasNoOvulation() {
    try (Kept fell = new Kept("{}", seen("2026-05-01", ""), seen("2026-07-15", ""));
        Kept turned = new Kept("{}", seen("2026-05-01", ""), seen("2026-07-15", ""));
        Kept whelped = new Kept("{}", seen("2026-05-01", LITTER), seen("2027-01-03", ""));
        Kept noUnit = new Kept("{}", seen("2026-05-01", ""), seen("2026-07-15", ""))) {
      for (Kept one : List.of(fell, turned, whelped)) {
        one.with(0, "p", progesterone("p", "2026-05-12", "6.1"))
            .with(0, "q", progesterone("q", "2026-05-19", "0.9"));
      }
      turned
          .with(0, "a", smear("a", "2026-05-17", 100, "none"))
          .with(0, "b", smear("b", "2026-05-18", 60, "few"));
      noUnit
          .with(0, "p", progesterone("p", "2026-05-12", "6.1"))
          .with(0, "q", progesterone("q", "2026-05-19", "0.9").replace(",\"unit\":\"ng/mL\"", ""));
      assertThat(kind(fell), is(EarlierKind.NO_OVULATION));
      assertThat("the smear turned", kind(turned), is(nullValue()));
      assertThat("she whelped", kind(whelped), is(nullValue()));
      assertThat("no unit", kind(noUnit), is(nullValue()));
    }
  }

  @Test
  void theKindThatIsTypedWins() {
    String typed = "{\"earlierCycles\":[{\"firstBloodOn\":\"2026-05-01\",\"kind\":\"silent\"}]}";
    String ovulated =
        "{\"earlierCycles\":[{\"firstBloodOn\":\"2026-05-01\",\"ovulatedOn\":\"2026-05-25\"}]}";
    try (Kept silent = new Kept(typed, seen("2026-05-01", ""), seen("2026-06-15", ""));
        Kept dated = new Kept(ovulated, seen("2026-05-01", ""), seen("2026-06-15", ""))) {
      silent.with(0, "p", progesterone("p", "2026-05-14", "0.8"));
      dated.with(0, "p", progesterone("p", "2026-05-14", "0.8"));
      assertThat(kind(silent), is(EarlierKind.SILENT));
      assertThat("typed as ovulated", kind(dated), is(nullValue()));
    }
  }

  private static @Nullable EarlierKind kind(Kept kept) {
    return kept.earlier(1).get(0).kind();
  }

  @Test
  void theTypedStayWhereTheReaderTakesNoMore() {
    StringBuilder typed = new StringBuilder("{\"earlierCycles\":[");
    for (int i = 0; i < 49; i++) {
      typed
          .append(i == 0 ? "" : ",")
          .append("{\"firstBloodOn\":\"")
          .append(LocalDate.of(2010, 1, 1).plusDays(100L * i))
          .append("\"}");
    }
    try (Kept kept =
        new Kept(
            typed + "]}",
            seen("2026-05-01", LITTER),
            seen("2026-09-01", ""),
            seen("2027-01-03", ""))) {
      List<EarlierCycle> earlier = kept.earlier(2);
      assertThat(earlier, hasSize(50));
      assertThat(earlier.get(49).firstBloodOn(), is(LocalDate.of(2026, 9, 1)));
      assertThat(earlier.get(48).firstBloodOn().getYear(), is(2023));
    }
  }

  @Test
  void whatPeopleWroteStaysAsItIs() {
    try (Kept kept = new Kept("{}", seen("2026-05-01", LITTER), seen("2027-01-03", ""))) {
      List<String> lines = new ArrayList<>();
      Transfer.export(kept.store, null, lines::add);
      assertThat(String.join("", lines), not(containsString("earlierCycles")));
      assertThat(kept.file(1, NOW), containsString("earlierCycles"));
      assertThat(
          kept.store.read(ledger -> ledger.females().find(kept.her.key())).orElseThrow().document(),
          is("{}"));
    }
  }
}

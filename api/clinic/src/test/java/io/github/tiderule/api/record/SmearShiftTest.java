package io.github.tiderule.api.record;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.format.Documents;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The day of the shift, as the record reads it without the rules. */
class SmearShiftTest {

  private static final Tiderule TIDERULE = Tiderule.create();
  private static final Pattern PAIR = Pattern.compile("between (c\\d+) and (c\\d+)");
  private static final int[] CORNIFIED = {100, 90, 85, 80, 75, 65, 60, 40};
  private static final String[] NEUTROPHILS = {
    "", ",\"neutrophils\":\"none\"", ",\"neutrophils\":\"few\"", ",\"neutrophils\":\"many\""
  };

  private static String smear(int day, int cornified, String neutrophils) {
    return "{\"id\":\"c%d\",\"kind\":\"cytology\",\"at\":\"2027-01-%02dT08:00:00+01:00\",\"cornifiedPercent\":%d%s}"
        .formatted(day, day, cornified, neutrophils);
  }

  private static String named(String sentence) {
    Matcher pair = PAIR.matcher(sentence);
    assertThat(sentence, pair.find(), is(true));
    return pair.group(1) + "-" + pair.group(2);
  }

  private static CycleRecord season(String... smears) {
    return Documents.read(
        Documents.cycleWith(String.join(",", smears)).replace("2027-01-12T18", "2027-01-31T18"));
  }

  @Test
  void isTheDayOfTheSmearThatShowsIt() {
    CycleRecord daily =
        season(
            smear(16, 100, ",\"neutrophils\":\"none\""),
            smear(17, 95, ",\"neutrophils\":\"none\""),
            smear(18, 75, ",\"neutrophils\":\"few\""),
            smear(19, 40, ",\"neutrophils\":\"many\""));
    assertThat(SmearShift.firstDay(daily), is(LocalDate.of(2027, 1, 18)));
  }

  @Test
  void staysOpenBetweenSmearsThreeDaysApart() {
    String full = smear(16, 100, "");
    String many = ",\"neutrophils\":\"many\"";
    assertThat(
        SmearShift.firstDay(season(full, smear(18, 40, many))), is(LocalDate.of(2027, 1, 18)));
    assertThat(SmearShift.firstDay(season(full, smear(19, 40, many))), is(nullValue()));
  }

  @Test
  void needsNeutrophils() {
    assertThat(SmearShift.firstDay(season(smear(16, 100, ""), smear(17, 40, ""))), is(nullValue()));
  }

  /** In drawn seasons it finds the pairs that rule FND-052 names, and no other. */
  @Test
  void findsWhatTheRuleFinds() {
    int found = 0;
    for (int seed = 1; seed <= 150; seed++) {
      Random random = new Random(seed);
      String[] smears = new String[2 + random.nextInt(4)];
      int day = 10;
      for (int i = 0; i < smears.length; i++) {
        day += 1 + random.nextInt(3);
        smears[i] =
            smear(
                day,
                CORNIFIED[random.nextInt(CORNIFIED.length)],
                NEUTROPHILS[random.nextInt(NEUTROPHILS.length)]);
      }
      CycleRecord season = season(smears);
      List<String> ours =
          SmearShift.pairs(season).stream()
              .map(pair -> pair.before().id() + "-" + pair.after().id())
              .toList();
      List<String> rules =
          TIDERULE.advise(season).reasoning().trace().stream()
              .filter(line -> line.rule().equals("FND-052"))
              .flatMap(line -> line.concluded().stream())
              .map(sentence -> named(sentence.toString()))
              .toList();
      assertThat("seed " + seed, new TreeSet<>(ours), is(new TreeSet<>(rules)));
      found += ours.size();
    }
    assertThat(found, greaterThan(40));
  }
}

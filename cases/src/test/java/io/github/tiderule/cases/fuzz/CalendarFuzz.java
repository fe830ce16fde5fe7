package io.github.tiderule.cases.fuzz;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalReader;
import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The calendar of a few advices with any names, words and times in them: it is read again without a
 * complaint, nothing in it can act, and an entry that moves says so.
 */
class CalendarFuzz {

  private static final int MOST_ADVICE = 4;
  private static final int MOST_HOURS = 3000;

  /** Octets, RFC 5545, section 3.1. */
  private static final int LONGEST_LINE = 75;

  private static final int LONGEST_TEXT = 90;
  private static final Instant NOW = Instant.parse("2027-01-12T17:30:00Z");
  private static final String SEASON = "0123456789abcdefghjkmnpqrs";

  private static final Set<String> LOOKED_AT =
      Set.of(
          "schema",
          "asOf",
          "action",
          "ovulation",
          "breedingDays",
          "plan",
          "nextTest",
          "whelping",
          "pregnancy");

  private static final List<Node> ADVICE =
      List.of(
          advice(Path.of("demo", "frozen-one-dose.json")),
          advice(Path.of("demo", "chilled-one-dose.json")),
          advice(Path.of("pregnancy", "0017-calendar-ten-days-after", "cycle.json")));

  @FuzzTest(maxDuration = Fuzzing.MOST)
  void write(FuzzedDataProvider data) {
    List<AdvisedDates> given = new ArrayList<>();
    Map<String, VEvent> before = new HashMap<>();
    String name = data.consumeString(LONGEST_TEXT);
    int count = data.consumeInt(1, MOST_ADVICE);
    for (int i = 0; i < count; i++) {
      Node node = changed(ADVICE.get(data.consumeInt(0, ADVICE.size() - 1)), new Change(data));
      given.add(AdvisedDates.of(NodeText.of(node), name));
      Map<String, VEvent> now = new HashMap<>();
      for (VEvent event : read(CalendarFeed.text(SEASON, given, NOW)).getEvents()) {
        assertThat(now.put(event.getUid().getValue(), event) == null, is(true));
      }
      before.forEach((uid, event) -> follows(event, now.get(uid)));
      before = now;
    }
  }

  /** An entry stays for ever, and moves only with a higher sequence number. */
  private static void follows(VEvent before, VEvent now) {
    int was = before.getSequence().getValue();
    int is = now.getSequence().getValue();
    boolean same =
        before.getDateStart().getValue().equals(now.getDateStart().getValue())
            && before.getStatus().getValue().equals(now.getStatus().getValue());
    assertThat(before + "\n" + now, same ? is >= was : is > was);
  }

  private static ICalendar read(String text) {
    for (String line : text.split("\r\n", -1)) {
      Shown.text(line);
      assertThat(line, line.indexOf('\n') < 0);
      assertThat(line, line.getBytes(StandardCharsets.UTF_8).length <= LONGEST_LINE);
    }
    try (ICalReader reader = new ICalReader(text)) {
      ICalendar calendar = reader.readNext();
      assertThat(reader.getWarnings().toString(), reader.getWarnings().isEmpty());
      assertThat(text, reader.readNext() == null);
      assertThat(calendar.validate(ICalVersion.V2_0).toString(), is(""));
      for (VEvent event : calendar.getEvents()) {
        Shown.text(event.getSummary().getValue());
        Shown.text(event.getDescription().getValue());
      }
      return calendar;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How far the times of an advice are moved, and whether words in it are others. */
  private static final class Change {

    private final FuzzedDataProvider data;
    private final int hours;

    Change(FuzzedDataProvider data) {
      this.data = data;
      this.hours = data.consumeInt(-MOST_HOURS, MOST_HOURS);
    }

    String text(String was) {
      if (was.equals(AdviceJson.SCHEMA)) {
        return was;
      }
      try {
        return OffsetDateTime.parse(was).plusHours(hours).toString();
      } catch (DateTimeParseException e) {
        return data.consumeBoolean() ? data.consumeString(LONGEST_TEXT) : was;
      }
    }
  }

  private static Node changed(Node node, Change change) {
    if (node instanceof Node.Text text) {
      return new Node.Text(change.text(text.value()));
    }
    if (node instanceof Node.Entries entries) {
      return new Node.Entries(entries.all().stream().map(one -> changed(one, change)).toList());
    }
    if (node instanceof Node.Members members) {
      Map<String, Node> byKey = new LinkedHashMap<>();
      members.byKey().forEach((key, value) -> byKey.put(key, changed(value, change)));
      return new Node.Members(byKey);
    }
    return node;
  }

  /** Of an advice, what a calendar looks at. */
  private static Node advice(Path file) {
    try {
      Reading.Read reading = (Reading.Read) CycleFile.read(Files.readAllBytes(file));
      String text = AdviceJson.text(Sound.ENGINE.advise(reading.cycle()), Layout.ONE_LINE);
      Map<String, Node> looked =
          new LinkedHashMap<>(
              ((Node.Members) NodeReader.read(text, new Problems()).orElseThrow()).byKey());
      looked.keySet().retainAll(LOOKED_AT);
      return new Node.Members(looked);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

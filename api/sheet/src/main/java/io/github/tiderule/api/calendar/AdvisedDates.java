package io.github.tiderule.api.calendar;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Problems;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What one advice puts on a date.
 *
 * @param asOf the moment the advice is for
 * @param headline what it says to do now
 * @param planned in the order of time within each kind
 */
public record AdvisedDates(OffsetDateTime asOf, String headline, List<Planned> planned) {

  private static final long DUE_HOURS = 1;
  private static final String WHELPED = "whelped";
  private static final Texts TEXTS = Texts.ofReports();
  private static final Words WORDS = Words.REPORTS;
  private static final Map<String, EntryKind> DUE =
      Map.of("order", EntryKind.ORDER, "book", EntryKind.BOOKING, "leave", EntryKind.LEAVING);

  /** Keeps a copy of the list. */
  public AdvisedDates {
    planned = List.copyOf(planned);
  }

  /**
   * Reads advice as {@link AdviceJson} wrote it.
   *
   * @param who what the female is called
   * @throws IllegalStateException if it is no such text
   */
  public static AdvisedDates of(String advice, String who) {
    Node node = NodeReader.read(advice, new Problems()).orElse(null);
    if (!(node instanceof Node.Members members)
        || !AdviceJson.SCHEMA.equals(members.text("schema"))) {
      throw new IllegalStateException("no text of the schema " + AdviceJson.SCHEMA);
    }
    List<Planned> planned = new ArrayList<>();
    addTest(planned, members, who);
    addPlan(planned, members, who);
    addEstimate(planned, members, EntryKind.OVULATION, who);
    addEstimate(planned, members, EntryKind.WHELPING, who);
    addMilestones(planned, members, who);
    addWhelped(planned, members, who);
    Node.Members action = members.members("action");
    return new AdvisedDates(
        there(instant(members, "asOf")),
        action == null ? "" : Planned.safe(there(action.text("headline"))),
        planned);
  }

  List<Planned> of(EntryKind kind) {
    return planned.stream().filter(one -> one.kind() == kind).toList();
  }

  private static void addTest(List<Planned> planned, Node.Members advice, String name) {
    Node.Members test = advice.members("nextTest");
    if (test == null) {
      return;
    }
    OffsetDateTime at = there(instant(test, "at"));
    String kind = there(test.text("kind"));
    planned.add(
        new Planned(
            EntryKind.TEST,
            at,
            at,
            TEXTS.say(
                test.entries("also").isEmpty() ? "calendar.test" : "calendar.test-and-lh",
                name,
                TEXTS.word("calendar.test.kind", kind)),
            TEXTS.say("calendar.test.more")));
  }

  private static void addPlan(List<Planned> planned, Node.Members advice, String name) {
    Node.Members plan = advice.members("plan");
    if (plan == null) {
      return;
    }
    for (Node node : plan.entries("at")) {
      planned.add(breeding(instant(node), advice, name));
    }
    List<Planned> due = new ArrayList<>();
    for (Node.Members commitment : plan.objects("commitments")) {
      EntryKind kind = DUE.get(there(commitment.text("kind")));
      if (kind != null) {
        OffsetDateTime by = there(instant(commitment, "by"));
        String what = there(commitment.text("text"));
        due.add(due(kind, by, name, TEXTS.say("calendar.due.more", what, WORDS.moment(by))));
      }
    }
    OffsetDateTime orderBy = instant(plan, "orderBy");
    if (orderBy != null && due.stream().noneMatch(one -> one.kind() == EntryKind.ORDER)) {
      due.add(
          due(
              EntryKind.ORDER,
              orderBy,
              name,
              TEXTS.say("calendar.order.more", WORDS.moment(orderBy))));
    }
    planned.addAll(due);
  }

  /** Something to be done by a time: the hour before it. */
  private static Planned due(EntryKind kind, OffsetDateTime by, String name, String more) {
    return new Planned(
        kind,
        by.minusHours(DUE_HOURS),
        by,
        TEXTS.say("calendar." + kind.word(), name, WORDS.clock(by)),
        more);
  }

  /** In the day's window when the time lies in it, else at the time itself. */
  private static Planned breeding(OffsetDateTime at, Node.Members advice, String name) {
    OffsetDateTime from = at;
    OffsetDateTime to = at;
    for (Node.Members day : advice.objects("breedingDays")) {
      OffsetDateTime opens = there(instant(day, "from"));
      OffsetDateTime closes = there(instant(day, "to"));
      if (!at.isBefore(opens) && !at.isAfter(closes)) {
        from = opens;
        to = closes;
        break;
      }
    }
    return new Planned(
        EntryKind.BREEDING,
        from,
        to,
        TEXTS.say("calendar.breed", name),
        TEXTS.say("calendar.breed.more", WORDS.moment(at)));
  }

  private static void addEstimate(
      List<Planned> planned, Node.Members advice, EntryKind kind, String name) {
    Node.Members estimate = advice.members(kind.word());
    if (estimate != null) {
      LocalDate median = there(instant(estimate, "median")).toLocalDate();
      planned.add(
          new Planned(
              kind,
              there(instant(estimate, "p05")),
              there(instant(estimate, "p95")),
              TEXTS.say("calendar." + kind.word(), name),
              TEXTS.say("calendar.more." + kind.word(), WORDS.day(median))));
    }
  }

  private static void addMilestones(List<Planned> planned, Node.Members advice, String name) {
    Node.Members pregnancy = advice.members("pregnancy");
    if (pregnancy == null) {
      return;
    }
    for (Node.Members milestone : pregnancy.objects("milestones")) {
      planned.add(
          new Planned(
              EntryKind.MILESTONE,
              there(instant(milestone, "from")),
              there(instant(milestone, "to")),
              TEXTS.say(
                  "calendar.milestone",
                  name,
                  TEXTS.word("calendar.milestone.kind", there(milestone.text("kind")))),
              TEXTS.say("calendar.milestone.more", there(milestone.text("title")))));
    }
  }

  /** In the place of the days in which she was expected to whelp, the day on which she did. */
  private static void addWhelped(List<Planned> planned, Node.Members advice, String name) {
    Node.Members pregnancy = advice.members("pregnancy");
    if (pregnancy == null) {
      return;
    }
    for (Node.Members one : pregnancy.objects("happened")) {
      if (WHELPED.equals(one.text("kind"))) {
        OffsetDateTime noon =
            LocalDate.parse(there(one.text("on")))
                .atTime(LocalTime.NOON)
                .atOffset(there(instant(advice, "asOf")).getOffset());
        planned.add(
            new Planned(
                EntryKind.WHELPING,
                noon,
                noon,
                TEXTS.say("calendar.whelped", name),
                TEXTS.say("calendar.whelped.more", there(one.text("text")))));
      }
    }
  }

  private static @Nullable OffsetDateTime instant(Node.Members holder, String name) {
    String text = holder.text(name);
    return text == null ? null : OffsetDateTime.parse(text);
  }

  private static OffsetDateTime instant(Node node) {
    return OffsetDateTime.parse(((Node.Text) node).value());
  }

  private static <T> T there(@Nullable T value) {
    if (value == null) {
      throw new IllegalStateException("a part of the advice is missing");
    }
    return value;
  }
}

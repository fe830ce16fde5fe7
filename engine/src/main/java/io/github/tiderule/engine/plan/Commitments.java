package io.github.tiderule.engine.plan;

import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.days.Deadline;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What must be done in time for a plan, counted back from it. */
public final class Commitments {

  private final SemenPlan semenPlan;
  private final Clock clock;

  public Commitments(SemenPlan semenPlan, Clock clock) {
    this.semenPlan = semenPlan;
    this.clock = clock;
  }

  /**
   * Everything, in time order; what serves several breedings at one time stands once.
   *
   * @param first the test on which all of it depends; null where it depends on none
   */
  List<Commitment> of(List<Slot> slots, @Nullable TestKind first) {
    List<Commitment> commitments = new ArrayList<>();
    for (CommitmentKind kind : CommitmentKind.values()) {
      Map<Instant, List<Slot>> byTime = new TreeMap<>();
      for (Slot slot : slots) {
        slot.by(kind).ifPresent(by -> byTime.computeIfAbsent(by, b -> new ArrayList<>()).add(slot));
      }
      byTime.forEach((by, served) -> commitments.add(of(kind, by, served, first)));
    }
    commitments.sort(
        Comparator.comparing(Commitment::by).thenComparing(commitment -> commitment.kind().word()));
    return commitments;
  }

  private Commitment of(
      CommitmentKind kind, Instant by, List<Slot> served, @Nullable TestKind first) {
    return new Commitment(
        kind,
        clock.offset(by),
        clock.offset(clock.quarter(served.get(0))),
        first == null
            ? Sentence.of("{} for {}", words(kind), clock.days(served))
            : Sentence.of(
                first == TestKind.CYTOLOGY
                    ? "If the smear is still full: {} for {}"
                    : "If the new result allows it: {} for {}",
                words(kind),
                clock.days(served)));
  }

  private static Sentence words(CommitmentKind kind) {
    return switch (kind) {
      case ORDER -> Sentence.of("Order the semen");
      case BOOK -> Sentence.of("Book the clinic");
      case LEAVE -> Sentence.of("Set out");
    };
  }

  /**
   * The most urgent one of a slot as an order: {@code Book the clinic by … to inseminate her …}.
   */
  public Sentence headline(Slot slot) {
    Deadline first =
        slot.deadlines().stream().min(Comparator.comparing(Deadline::by)).orElseThrow();
    String template =
        first.kind() == CommitmentKind.ORDER
            ? "{} by {} to use it on {}, {}."
            : semenPlan.semen() == Semen.NATURAL
                ? "{} by {} to mate her on {}, {}."
                : "{} by {} to inseminate her on {}, {}.";
    return Sentence.of(
        template,
        words(first.kind()),
        clock.dayAndTime(first.by()),
        clock.day(slot.middle()),
        clock.span(slot));
  }
}

package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.advice.CommitmentKind;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What must be done for a window, and until when it can be chosen and called off. */
class SlotTest {

  private static final Instant MIDDLE = Instant.parse("2027-03-12T10:00:00Z");
  private static final Deadline BOOK = before(CommitmentKind.BOOK, 17);
  private static final Deadline LEAVE = before(CommitmentKind.LEAVE, 3);
  private static final Deadline ORDER = before(CommitmentKind.ORDER, 9);

  private static Deadline before(CommitmentKind kind, int hours) {
    return new Deadline(kind, MIDDLE.minusSeconds(3600L * hours));
  }

  private static Slot slot(Deadline... deadlines) {
    return new Slot(
        LocalDate.of(2027, 3, 12),
        MIDDLE.minusSeconds(7200),
        MIDDLE.plusSeconds(7200),
        MIDDLE,
        24,
        List.of(deadlines));
  }

  @Test
  void theFirstDeadlineDecides() {
    assertThat(slot(LEAVE, BOOK, ORDER).decideBy(), is(BOOK.by()));
    assertThat(slot(LEAVE).decideBy(), is(LEAVE.by()));
    assertThat(slot().decideBy(), is(MIDDLE));
  }

  @Test
  void aBookingCanBeCalledOffAndAnOrderCannot() {
    assertThat(slot(LEAVE, BOOK, ORDER).lastCall(), is(ORDER.by()));
    assertThat(slot(BOOK, LEAVE).lastCall(), is(LEAVE.by()));
    assertThat(slot(BOOK).lastCall(), is(MIDDLE));
    assertThat(slot().lastCall(), is(MIDDLE));
  }

  @Test
  void everyDeadlineIsFoundByItsKind() {
    Slot slot = slot(LEAVE, BOOK);
    assertThat(slot.by(CommitmentKind.BOOK), equalTo(Optional.of(BOOK.by())));
    assertThat(slot.by(CommitmentKind.LEAVE), equalTo(Optional.of(LEAVE.by())));
    assertThat(slot.by(CommitmentKind.ORDER), equalTo(Optional.empty()));
  }
}

package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.pregnancy.PregnancyCourse;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Standing;
import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Says whether a vet comes first. */
final class VetChoice {

  private final Standing standing;
  private final @Nullable PregnancyCourse course;
  private final Care care;

  VetChoice(Standing standing, @Nullable PregnancyCourse course, Care care) {
    this.standing = standing;
    this.course = course;
    this.care = care;
  }

  /** A vet first, for her own sake. */
  Optional<Action> action() {
    boolean asked =
        standing.silent()
            || care.all(Caution.class).stream()
                .anyMatch(one -> one.level() == CautionLevel.VET && !one.observations().isEmpty());
    if (!asked) {
      return Optional.empty();
    }
    return Optional.of(new Action(Now.VET, toVet(), grave()));
  }

  /** Ids of the rules that stop, or send to a vet. */
  private List<String> grave() {
    return care.ruled(Caution.class)
        .filter(ruled -> ruled.conclusion().level() != CautionLevel.CARE)
        .map(ruled -> ruled.rule().id())
        .distinct()
        .toList();
  }

  private boolean about(About about) {
    return care.all(Caution.class).stream().anyMatch(one -> one.about() == about);
  }

  private Sentence toVet() {
    if (standing instanceof Standing.ForVet && about(About.TOO_YOUNG)) {
      return Sentence.of(
          "She is too young to be bred: let this season pass, and plan for a later one.");
    }
    if (about(About.AFTER_WHELPING)) {
      return standing instanceof Standing.Stopped
          ? Sentence.of(
              "See a vet today: so soon after whelping this is discharge or illness, no season.")
          : Sentence.of("See a vet before any plan: she whelped not long before this bleeding.");
    }
    if (standing instanceof Standing.Stopped) {
      return pastBreeding()
          ? Sentence.of("Call a vet now; everything else waits.")
          : Sentence.of("See a vet today; nothing about breeding days matters until then.");
    }
    if (standing instanceof Standing.ForVet) {
      Optional<Sentence> lead = new CourseChoice(standing).lead();
      return lead.isPresent()
          ? lead.get()
          : Sentence.of("See a vet before any plan: these values cannot be read without one.");
    }
    return pastBreeding()
        ? Sentence.of("Have a vet examine her today.")
        : Sentence.of("Have a vet examine her before she is bred.");
  }

  private boolean pastBreeding() {
    return course != null && course.pastBreeding();
  }
}

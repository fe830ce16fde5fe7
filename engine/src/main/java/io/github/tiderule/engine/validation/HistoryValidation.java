package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Checks the female, her earlier seasons and what became of this one. */
record HistoryValidation(SeasonDates dates) {

  void check(Place place, Female female) {
    place.text("id", female.id(), Limits.ID);
    place.text("name", female.name(), Limits.NAME);
    place.text("breed", female.breed(), Limits.NAME);
    place.number("bodyMassKg", female.bodyMassKg(), Limits.BODY_MASS);
    place.day("bornOn", female.bornOn(), dates::past);
    place.whole("littersWhelped", female.littersWhelped(), Limits.COUNT);
    place.whole("caesareans", female.caesareans(), Limits.COUNT);
    place.whole("missedPregnancies", female.missedPregnancies(), Limits.COUNT);
  }

  void check(Place place, EarlierCycle earlier, @Nullable LocalDate thisBlood) {
    boolean dated = place.has("firstBloodOn", earlier.firstBloodOn());
    place.day("firstBloodOn", earlier.firstBloodOn(), dates::past);
    place.day("ovulatedOn", earlier.ovulatedOn(), dates::past);
    place.day("dioestrusOn", earlier.dioestrusOn(), dates::past);
    place.day("whelpedOn", earlier.whelpedOn(), dates::past);
    place.whole("litterSize", earlier.litterSize(), Limits.PUPS);
    place.note(SeasonConsistency.whelped(earlier.pregnant(), earlier.whelpedOn()));
    if (dated) {
      place.note(SeasonConsistency.order(earlier, thisBlood));
    }
  }

  void check(Place place, Treatment treatment) {
    place.has("kind", treatment.kind());
    place.has("on", treatment.on());
    place.day("on", treatment.on(), dates::past);
    place.day("removedOn", treatment.removedOn(), dates::past);
    if (treatment.on() != null) {
      place.note(SeasonConsistency.removed(treatment));
    }
  }

  void check(Place place, Outcome outcome, @Nullable LocalDate firstBlood) {
    place.day("whelpedOn", outcome.whelpedOn(), dates::pastOfSeason);
    place.whole("litterSize", outcome.litterSize(), Limits.PUPS);
    place.whole("pupsBornAlive", outcome.pupsBornAlive(), Limits.PUPS);
    place.note(SeasonConsistency.outcome(outcome, firstBlood));
  }
}

package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.Disagreement;
import io.github.tiderule.engine.advice.reasoning.ObservationNote;
import io.github.tiderule.engine.advice.reasoning.ObservationUse;
import io.github.tiderule.rules.fact.assay.Unit;
import java.util.List;

/** What is not taken at its face: doubted observations, and what schools disagree about. */
final class Doubts {

  private static final Texts TEXTS = Texts.ofReports();

  private Doubts() {}

  /** Observations that are held, discounted, converted or set aside. */
  static void writeNotes(Page page, Advice advice) {
    if (advice.reasoning().observationNotes().isEmpty()) {
      return;
    }
    page.heading(SectionKind.TAKEN);
    advice.reasoning().observationNotes().stream()
        .filter(note -> note.use() != ObservationUse.CONVERTED)
        .forEach(note -> page.hanging(2, "-", words(note, page.telling())));
    List<String> converted =
        advice.reasoning().observationNotes().stream()
            .filter(note -> note.use() == ObservationUse.CONVERTED)
            .map(ObservationNote::observation)
            .distinct()
            .toList();
    if (!converted.isEmpty()) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "taken.converted",
              page.telling().named(converted),
              page.telling().words().number(Unit.NMOL_PER_L.fromNgPerMl(1))));
    }
  }

  private static String words(ObservationNote note, Telling telling) {
    return switch (note.use()) {
      case HELD -> TEXTS.say("taken.held") + " " + telling.sayWithin(note.text());
      case SET_ASIDE -> TEXTS.say("taken.set-aside") + " " + telling.sayWithin(note.text());
      default -> telling.say(note.text());
    };
  }

  /** Topics on which schools disagree, with what each holds. */
  static void writeDisagreements(Page page, Advice advice) {
    if (advice.reasoning().disagreements().isEmpty()) {
      return;
    }
    page.heading(SectionKind.DISAGREEMENTS);
    for (Disagreement dispute : advice.reasoning().disagreements()) {
      page.hanging(2, "-", TEXTS.say("school.about", dispute.about()) + ":");
      page.bullets(4, dispute.positions().stream().map(Disagreement.Position::text).toList());
      page.indented(
          4,
          TEXTS.say(
              "school.leans",
              page.telling().sayWithin(dispute.leansTo()),
              page.telling().sayWithin(dispute.why())));
    }
  }

  /** The same for a vet, with rules and sources. */
  static void writeDisagreementsWithSources(Page page, Advice advice) {
    if (advice.reasoning().disagreements().isEmpty()) {
      return;
    }
    page.heading(SectionKind.SCHOOLS);
    for (Disagreement dispute : advice.reasoning().disagreements()) {
      page.hanging(2, "-", TEXTS.say("school.about", dispute.about()));
      for (Disagreement.Position position : dispute.positions()) {
        page.hanging(
            6,
            position.rule() + ":",
            page.telling().say(position.text())
                + " ["
                + String.join(", ", position.sources())
                + "]");
      }
      page.hanging(6, TEXTS.say("school.plan"), dispute.leansTo());
      page.hanging(6, TEXTS.say("school.why"), dispute.why());
    }
  }
}

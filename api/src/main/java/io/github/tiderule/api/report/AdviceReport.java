package io.github.tiderule.api.report;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.LocalProtocol;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Query;
import io.github.tiderule.engine.advice.Warning;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The plan for a breeder: what to do now, which days and why, how sure, what next, and what would
 * change it. Plain text of at most 80 columns, without colour.
 */
public final class AdviceReport {

  private static final int HASH_LETTERS = 12;
  private static final String CARE = "care";

  private final CycleRecord cycle;
  private final Advice advice;
  private final Page page = new Page();

  private AdviceReport(CycleRecord cycle, Advice advice) {
    this.cycle = cycle;
    this.advice = advice;
  }

  /** The report on a cycle, each line ended by a line feed. */
  public static String text(CycleRecord cycle, Advice advice) {
    return new AdviceReport(cycle, advice).written().toString();
  }

  /** The same in sections, to be set on paper; the first has the title, the last the stamp. */
  public static List<Section> sections(CycleRecord cycle, Advice advice) {
    return new AdviceReport(cycle, advice).written().sections();
  }

  private Page written() {
    title();
    now();
    plan();
    SheetSection.write(page, advice.insemination());
    BeforeSeasonSection.write(page, advice.beforeSeason());
    DaysTable.write(page, advice.breedingDays());
    Certainties.write(page, cycle, advice);
    nextTest();
    questions();
    Doubts.writeNotes(page, advice);
    PregnancySection.write(page, advice);
    changes();
    Certainties.writeWeights(page, cycle, advice.influence());
    Doubts.writeDisagreements(page, advice);
    cautions();
    foot();
    return page;
  }

  private void title() {
    String name = cycle.female().name();
    String id = advice.femaleId();
    String who = name != null ? name : id != null ? id : "an unnamed female";
    page.line("Breeding-day plan for " + who);
    page.line("as of " + LocalWords.moment(advice.asOf()) + "; all times are for " + cycle.zone());
  }

  private void now() {
    page.heading(Section.NOW);
    page.indented(2, advice.action().headline());
    for (Warning caution : advice.cautions()) {
      if (!caution.level().equals(CARE)) {
        page.hanging(2, caution.level().equals("vet") ? "See a vet:" : "Stop:", caution.text());
      }
    }
  }

  private void plan() {
    page.heading(Section.PLAN);
    bred(advice.bred());
    Plan plan = advice.plan();
    if (plan == null) {
      if (advice.bred() == null) {
        page.indented(2, "No day can be named yet; what to do now, and the questions, say why.");
      }
      return;
    }
    for (int i = 0; i < plan.at().size(); i++) {
      page.hanging(
          2, (i + 1) + ".", DaysTable.momentInWindow(plan.at().get(i), advice.breedingDays()));
    }
    String together =
        advice.bred() != null
            ? "With what is done, she meets "
            : plan.at().size() == 1 ? "It should meet " : "Together they meet ";
    page.indented(
        2,
        together
            + Shares.inHundred(plan.eggShare().mean())
            + " of her eggs"
            + Shares.unlucky(plan.eggShare().p10())
            + ".");
    for (Commitment commitment : plan.commitments()) {
      boolean now = !commitment.by().isAfter(advice.asOf());
      page.indented(
          2,
          commitment.text()
              + (now ? " now." : " by " + LocalWords.moment(commitment.by()) + ", at the latest."));
    }
    if (plan.forecast() != null) {
      page.hanging(2, "Decide on the forecast:", plan.forecast().text());
    }
    plan.notes().forEach(note -> page.indented(2, note));
    if (!plan.alternatives().isEmpty()) {
      page.indented(2, "Other ways:");
      for (Plan.Alternative other : plan.alternatives()) {
        page.hanging(
            2,
            "-",
            LocalWords.moments(other.at())
                + ": "
                + Shares.inHundred(other.eggShare().mean())
                + ". "
                + capitalised(other.note()));
      }
    }
  }

  private static String capitalised(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private void bred(@Nullable Bred bred) {
    if (bred != null) {
      page.indented(
          2,
          (bred.count() == 1
                  ? "The breeding already done meets "
                  : "The breedings already done meet ")
              + Shares.inHundred(bred.eggShare().mean())
              + " of her eggs"
              + Shares.unlucky(bred.eggShare().p10())
              + ". "
              + bred.text());
    }
  }

  private void nextTest() {
    page.heading(Section.NEXT_TEST);
    NextTest test = advice.nextTest();
    if (test == null) {
      String because = advice.noTestBecause();
      page.indented(
          2,
          because != null
              ? "None. " + because + "."
              : advice.plan() == null ? "None for now." : "None is needed for this plan.");
    } else {
      String kind =
          switch (test.kind()) {
            case "progesterone" -> "Progesterone";
            case "lh" -> "An LH test";
            case "cytology" -> "A vaginal smear";
            default -> test.kind();
          };
      page.indented(
          2,
          kind
              + ", on "
              + LocalWords.moment(test.at())
              + "; its result should be there by "
              + LocalWords.day(test.resultAt().toLocalDate())
              + ", "
              + LocalWords.clock(test.resultAt())
              + ".");
      if (!test.also().isEmpty()) {
        page.indented(
            2,
            "Have the same blood tested for LH, where that can be had: the surge dates ovulation"
                + " more closely than progesterone does.");
      }
      if (test.gain() < 0.005 && !test.kind().equals("lh")) {
        page.indented(
            2,
            (test.kind().equals("cytology")
                    ? "It is to date her, and the whelping with it"
                    : "It is to prove ovulation, and to date the whelping")
                + (advice.plan() == null ? "." : "; it will hardly change the plan."));
      }
      if (test.gain() >= 0.005) {
        page.indented(
            2,
            "With its result in hand, the plan meets "
                + Shares.number(test.gain())
                + " more in 100 of her eggs.");
      }
    }
    page.indented(
        2,
        "Ask again by " + LocalWords.moment(advice.validUntil()) + ", or when anything changes.");
  }

  private void questions() {
    if (advice.questions().isEmpty()) {
      return;
    }
    page.heading(Section.QUESTIONS);
    ObservationWords names = new ObservationWords(cycle);
    for (Query query : advice.questions()) {
      page.hanging(2, "-", query.text());
      page.indented(4, "This is about " + names.of(query.about()) + ".");
      for (Query.Reading reading : query.readings()) {
        page.hanging(4, "in " + reading.unit() + ":", reading.meaning());
      }
    }
  }

  private void changes() {
    if (advice.wouldChange().isEmpty()) {
      return;
    }
    page.heading(Section.WOULD_CHANGE);
    advice
        .wouldChange()
        .forEach(
            change -> {
              page.hanging(2, "-", change.ifThen());
              page.indented(
                  4,
                  change.plan().isEmpty()
                      ? "Then no plan would stand."
                      : "Then best: " + LocalWords.moments(change.plan()) + ".");
            });
  }

  private void cautions() {
    List<String> care =
        advice.cautions().stream()
            .filter(caution -> caution.level().equals(CARE))
            .map(Warning::text)
            .filter(text -> !SheetSection.said(advice.insemination()).contains(text))
            .toList();
    if (!care.isEmpty()) {
      page.heading(Section.CAUTIONS);
      page.bullets(2, care);
    }
  }

  private void foot() {
    page.gap();
    LocalProtocol overlay = advice.stamp().overlay();
    if (overlay != null) {
      page.line(
          "Worked out with the local protocol "
              + overlay.name()
              + ", which changes "
              + (overlay.changes().size() == 1
                  ? "1 parameter"
                  : overlay.changes().size() + " parameters")
              + "; the trace names them.");
    }
    String rules = advice.stamp().rules().replaceFirst("^sha256:", "");
    String hash = rules.substring(0, Math.min(HASH_LETTERS, rules.length()));
    page.line(
        "Engine "
            + advice.stamp().engine()
            + ", rules "
            + hash
            + ". Not a substitute for a vet; check your own local rules.");
  }
}

package io.github.tiderule.cases.contradiction;

import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.rules.conclusion.Effect;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What no answer may say beside something else it says. */
enum Contradiction {

  /** "Do not breed by the day count alone", above a plan that has nothing else to go by. */
  PLAN_BY_THE_DAYS_IT_WARNS_OF {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      boolean warned = advice.action().headline().template().contains("day count");
      return when(
          warned && advice.breeding().plan() != null,
          () -> "warned of, and planned: " + plan(advice));
    }
  },

  /** "Every other day", over a plan of times that are not two days apart. */
  EVERY_OTHER_DAY {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Plan plan = advice.breeding().plan();
      if (plan == null
          || plan.notes().stream().noneMatch(note -> note.template().contains("every other day"))) {
        return Optional.empty();
      }
      for (int i = 1; i < plan.at().size(); i++) {
        double gap = hours(plan.at().get(i - 1), plan.at().get(i));
        if (Math.abs(gap - 2 * DAY) > HALF_A_DAY) {
          return Optional.of("not every other day: " + plan.at());
        }
      }
      return when(plan.at().size() < 2, () -> "every other day, of one day: " + plan.at());
    }
  },

  /**
   * A test told to leave the plan about the same, beside a value of it that moves the first day by
   * more than half a day.
   */
  NOTHING_GAINED_BY_WHAT_MOVES_THE_PLAN {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      NextTest test = advice.testing().next();
      Plan plan = advice.breeding().plan();
      if (test == null || plan == null || test.gain() >= TOLD_GAIN || test.kind() == TestKind.LH) {
        return Optional.empty();
      }
      return advice.testing().wouldChange().stream()
          .filter(change -> change.observation().equals("next"))
          .filter(change -> moves(change, plan))
          .filter(change -> told(cycle, advice).contains("the plan will stay about the same"))
          .map(change -> change.ifThen() + ", yet its gain is " + test.gain())
          .findFirst();
    }

    private boolean moves(Change change, Plan plan) {
      return change.plan().isEmpty()
          || Math.abs(hours(plan.at().get(0), change.plan().get(0))) > HALF_A_DAY;
    }
  },

  /** A result that comes after the only dose is settled, and is called worth something for it. */
  USEFUL_AFTER_THE_ACT {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      NextTest test = advice.testing().next();
      Plan plan = advice.breeding().plan();
      Action.Now now = advice.action().now();
      boolean acts = now == Action.Now.BREED || now == Action.Now.BOOK;
      if (test == null || plan == null || !acts || plan.at().size() > 1) {
        return Optional.empty();
      }
      OffsetDateTime settled =
          Stream.concat(
                  plan.commitments().stream().map(Commitment::by), Stream.of(plan.at().get(0)))
              .min(OffsetDateTime::compareTo)
              .orElseThrow();
      return when(
          test.gain() >= TOLD_GAIN && test.resultAt().isAfter(settled),
          () -> test.kind() + " is there at " + test.resultAt() + ", settled at " + settled);
    }
  },

  /** A day whose reasons against it are all left out of what is told of it. */
  REASONS_AGAINST_LEFT_OUT {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      List<BreedingDay> against =
          advice.breeding().days().stream()
              .filter(day -> day.reasons().stream().anyMatch(Contradiction::against))
              .limit(LISTED)
              .toList();
      if (against.isEmpty()) {
        return Optional.empty();
      }
      String told = told(cycle, advice);
      return against.stream()
          .filter(day -> day.rank() <= LISTED)
          .filter(
              day ->
                  day.reasons().stream()
                      .filter(Contradiction::against)
                      .noneMatch(reason -> told.contains(start(reason))))
          .map(day -> day.day() + " " + day.verdict().word() + ": " + day.reasons())
          .findFirst();
    }

    /** Names and days are phrased anew further on. */
    private String start(Reason reason) {
      String template = reason.text().template();
      int hole = template.indexOf('{');
      return hole < 0 ? template : template.substring(0, hole);
    }
  },

  /** A day to avoid, and nothing said against it. */
  AVOIDED_WITHOUT_A_REASON {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      return advice.breeding().days().stream()
          .filter(day -> day.verdict() == Verdict.AVOID)
          .filter(day -> day.reasons().stream().noneMatch(Contradiction::against))
          .map(day -> day.day() + " is to be avoided for " + day.reasons())
          .findFirst();
    }
  },

  /**
   * A date of whelping where nothing is bred and no day is left to breed on; not where she is known
   * to be pregnant, or an emergency must be told from its day.
   */
  WHELPING_OF_NOTHING {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Whelping whelping = advice.course().whelping();
      boolean dayLeft =
          advice.breeding().plan() != null
              || advice.breeding().days().stream().anyMatch(day -> day.verdict() != Verdict.AVOID);
      return when(
          whelping != null
              && advice.breeding().bred() == null
              && !dayLeft
              && advice.cautions().stream()
                  .noneMatch(caution -> caution.level() == CautionLevel.STOP)
              && advice.reasoning().trace().stream()
                  .noneMatch(line -> PREGNANT.contains(line.rule())),
          () -> "whelping without a breeding: " + whelping);
    }
  },

  /** Two days on which she is due. */
  TWO_DUE_DATES {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Whelping whelping = advice.course().whelping();
      if (whelping == null || !advice.action().headline().toString().contains("Due about")) {
        return Optional.empty();
      }
      return when(
          !advice.action().headline().days().contains(whelping.median().toLocalDate()),
          () -> advice.action().headline() + " But: " + whelping.median());
    }
  },

  /** "The same laboratory", where the values are of none or of several. */
  SAME_LABORATORY_OF_SEVERAL {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      long series =
          cycle.observations().stream()
              .filter(Progesterone.class::isInstance)
              .map(one -> ((Progesterone) one).series())
              .distinct()
              .count();
      return when(
          series != 1
              && advice.action().headline().template().contains("same laboratory and method"),
          () -> advice.action().headline() + " But there are " + series);
    }
  },

  /** A plan, or a day recommended, on values of which the headline says that nothing is done. */
  PLANNED_ON_NOTHING {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      String headline = advice.action().headline().toString();
      boolean waits = headline.contains("commit nothing") || headline.contains("trust no date");
      boolean recommended =
          advice.breeding().days().stream().anyMatch(day -> day.verdict() == Verdict.RECOMMENDED);
      return when(
          waits && (advice.breeding().plan() != null || recommended),
          () -> "planned beside: " + headline);
    }
  },

  /** One word for a day that meets nearly all her eggs and for one that meets a seventh of them. */
  ONE_WORD_FOR_FEW_AND_ALL {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      DoubleSummaryStatistics possible =
          advice.breeding().days().stream()
              .filter(day -> day.verdict() == Verdict.POSSIBLE)
              .mapToDouble(day -> day.eggShare().mean())
              .summaryStatistics();
      return when(
          possible.getCount() > 1 && possible.getMin() < possible.getMax() / 4,
          () -> "possible at " + possible.getMin() + " and at " + possible.getMax());
    }
  },

  /** What is met one time in ten, printed above what is met on average. */
  UNLUCKY_ABOVE_THE_MEAN {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      return PRINTED
          .matcher(AdviceReport.text(cycle, advice))
          .results()
          .filter(told -> Integer.parseInt(told.group(2)) > Integer.parseInt(told.group(1)))
          .map(MatchResult::group)
          .findFirst();
    }
  },

  /** Ovulation proven to lie between two drawings, and dated somewhere else. */
  PROOF_BESIDE_ANOTHER_DATE {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Ovulation ovulation = advice.timing().ovulation();
      if (ovulation == null) {
        return Optional.empty();
      }
      return advice.reasoning().trace().stream()
          .filter(line -> line.rule().equals(PROOF))
          .map(line -> beside(cycle, line, ovulation))
          .flatMap(Optional::stream)
          .findFirst();
    }

    /** The level may be crossed up to two days before the earlier of the two drawings. */
    private Optional<String> beside(CycleRecord cycle, TraceLine line, Ovulation ovulation) {
      List<Instant> drawn =
          cycle.observations().stream()
              .filter(one -> line.matched().contains(one.id()))
              .map(Observation::at)
              .sorted()
              .toList();
      Instant earliest = drawn.get(0).minus(Duration.ofHours((long) (2 * DAY)));
      Instant latest = drawn.get(drawn.size() - 1);
      boolean meets =
          ovulation.p05().toInstant().isBefore(latest)
              && ovulation.p95().toInstant().isAfter(earliest);
      return when(
          !meets,
          () ->
              "proven between " + drawn + ", dated " + ovulation.p05() + " to " + ovulation.p95());
    }
  },

  /** Called proven, and as likely as not to come yet. */
  PROVEN_AND_STILL_TO_COME {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Ovulation ovulation = advice.timing().ovulation();
      return when(
          ovulation != null && ovulation.confirmed() && ovulation.median().isAfter(advice.asOf()),
          () -> "proven, and expected for " + advice.timing().ovulation());
    }
  },

  /** Proven, and more likely not to happen at all. */
  PROVEN_AND_UNLIKELY {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Ovulation ovulation = advice.timing().ovulation();
      return when(
          ovulation != null && ovulation.confirmed() && ovulation.noOvulationProbability() > 0.5,
          () -> "proven, and none in " + advice.timing().ovulation());
    }
  },

  /** Over, while an allowed day would meet half her eggs and no smear has turned. */
  OVER_WITH_HALF_HER_EGGS_LEFT {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      boolean turned =
          advice.reasoning().trace().stream().anyMatch(line -> line.rule().equals(TURNED));
      if (advice.action().now() != Action.Now.PASSED
          || turned
          || advice.breeding().bred() != null) {
        return Optional.empty();
      }
      return advice.breeding().days().stream()
          .filter(day -> day.eggShare().mean() >= 0.5)
          .filter(day -> day.reasons().stream().noneMatch(one -> one.effect() == Effect.VETOES))
          .map(day -> advice.action().headline() + " But: " + day)
          .findFirst();
    }
  },

  /** A dose to be given or booked for a bitch of whom it is said that she will not ovulate. */
  BRED_THOUGH_SHE_WILL_NOT_OVULATE {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Ovulation ovulation = advice.timing().ovulation();
      Action.Now now = advice.action().now();
      return when(
          ovulation != null
              && ovulation.noOvulationProbability() > 0.5
              && (now == Action.Now.BREED || now == Action.Now.BOOK),
          () -> advice.action().headline() + " But: " + ovulation);
    }
  },

  /** A time of the plan, or of another worth knowing, on a day that is not among those listed. */
  PLANNED_ON_NO_LISTED_DAY {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Plan plan = advice.breeding().plan();
      if (plan == null) {
        return Optional.empty();
      }
      Set<LocalDate> listed =
          advice.breeding().days().stream().map(BreedingDay::day).collect(Collectors.toSet());
      return Stream.concat(
              plan.at().stream(), plan.alternatives().stream().flatMap(one -> one.at().stream()))
          .filter(at -> !listed.contains(at.toLocalDate()))
          .map(at -> "planned for " + at + ", listed " + new TreeSet<>(listed))
          .findFirst();
    }
  },

  /** Whelping later after the last likely day of ovulation than any published pregnancy lasts. */
  WHELPING_LATER_THAN_ANY {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      Whelping whelping = advice.course().whelping();
      Ovulation ovulation = advice.timing().ovulation();
      if (whelping == null || ovulation == null) {
        return Optional.empty();
      }
      OffsetDateTime last = ovulation.p95().plusDays(LONGEST_PREGNANCY);
      boolean later =
          whelping.p95().isAfter(last)
              || whelping.byDay().stream()
                  .filter(day -> day.probability() >= LIKELY_DAY)
                  .anyMatch(day -> day.day().isAfter(last.toLocalDate()));
      return when(
          later, () -> "whelping until " + whelping.p95() + ", ovulation until " + ovulation.p95());
    }
  },

  /** "Test again", and no test that is next. */
  TEST_AGAIN_AND_NO_TEST {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      String headline = advice.action().headline().template().toLowerCase(Locale.ROOT);
      return when(
          headline.contains("test again")
              && advice.action().now() == Action.Now.TEST
              && advice.testing().next() == null,
          () -> advice.action().headline().toString());
    }
  },

  /** "Nothing is left to time", beside a plan, a day recommended or a test that is next. */
  NOTHING_LEFT_AND_A_PLAN {
    @Override
    Optional<String> in(CycleRecord cycle, Advice advice) {
      boolean left =
          advice.breeding().plan() != null
              || advice.testing().next() != null
              || advice.breeding().days().stream()
                  .anyMatch(day -> day.verdict() == Verdict.RECOMMENDED);
      return when(
          left && advice.action().headline().template().contains("nothing is left"),
          () ->
              advice.action().headline()
                  + " But: "
                  + plan(advice)
                  + ", next "
                  + advice.testing().next());
    }
  };

  /** Longest published pregnancy from ovulation, in days: 63.1 and four spreads (mir-2011). */
  private static final int LONGEST_PREGNANCY = 72;

  /** A day less likely than this is not looked at. */
  private static final double LIKELY_DAY = 0.01;

  private static final double DAY = 24;
  private static final double HALF_A_DAY = 12;

  /** From this gain on a test is told to be worth something for the plan. */
  private static final double TOLD_GAIN = 0.005;

  /** So many days are listed with their reasons. */
  private static final int LISTED = 12;

  /** A share and, in brackets, what it falls to one time in ten. */
  private static final Pattern PRINTED = Pattern.compile("([0-9]+) \\((?:[a-z]+ )?([0-9]+)\\)");

  private static final String PROOF = "FND-011";
  private static final String TURNED = "FND-052";
  private static final Set<String> PREGNANT =
      Set.of("FND-092", "FND-094", "FND-095", "FND-098", "FND-099", "FND-100");

  /** What an answer says beside what else it says; nothing where that holds together. */
  abstract Optional<String> in(CycleRecord cycle, Advice advice);

  private static String told(CycleRecord cycle, Advice advice) {
    return AdviceReport.text(cycle, advice).replaceAll("\\s+", " ");
  }

  private static boolean against(Reason reason) {
    return reason.effect() != Effect.SUPPORTS;
  }

  private static double hours(OffsetDateTime from, OffsetDateTime to) {
    return Duration.between(from, to).toMinutes() / 60.0;
  }

  private static String plan(Advice advice) {
    Plan plan = advice.breeding().plan();
    return plan == null ? "" : plan.at().toString();
  }

  private static Optional<String> when(boolean is, Supplier<String> what) {
    return is ? Optional.of(what.get()) : Optional.empty();
  }

  String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}

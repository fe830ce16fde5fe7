package io.github.tiderule.api.picture;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.fact.semen.Route;
import org.jspecify.annotations.Nullable;

/** What an observation showed, in words: whole for a table, short for a row of the picture. */
final class FindingWords {

  private static final Texts TEXTS = Texts.ofReports();

  private final CurveWords words;
  private final Words written;

  FindingWords(CurveWords words, Words written) {
    this.words = words;
    this.written = written;
  }

  /** As in {@code smear: 85 % cornified, no neutrophils}. */
  String of(Observation observation) {
    if (observation instanceof Progesterone value) {
      return kind(value) + " " + words.number(value) + ", " + value.series().words();
    }
    if (observation instanceof ProgesteroneBand band) {
      return words.of(band);
    }
    return kind(observation) + ": " + whole(observation, written);
  }

  /** What kind of observation it is. */
  static String kind(Observation observation) {
    if (observation instanceof Smear) {
      return TEXTS.say("curve.kind.smear");
    }
    if (observation instanceof LhTest) {
      return TEXTS.say("curve.kind.lh");
    }
    if (observation instanceof Vaginoscopy) {
      return TEXTS.say("curve.kind.folds");
    }
    if (observation instanceof Sign) {
      return TEXTS.say("curve.kind.sign");
    }
    if (observation instanceof OvaryScan) {
      return TEXTS.say("curve.kind.scan");
    }
    if (observation instanceof PregnancyScan) {
      return TEXTS.say("curve.kind.pregnancy-scan");
    }
    if (observation instanceof Radiograph) {
      return TEXTS.say("curve.kind.radiograph");
    }
    if (observation instanceof BodyTemperature) {
      return TEXTS.say("curve.kind.temperature");
    }
    if (observation instanceof ProgesteroneBand) {
      return TEXTS.say("curve.kind.band");
    }
    return TEXTS.say(
        observation instanceof BreedingDone ? "curve.kind.breeding" : "curve.kind.progesterone");
  }

  /** Whether it has a place on the curve; what belongs to pregnancy stands in the table alone. */
  static boolean drawn(Observation observation) {
    return observation instanceof Progesterone
        || observation instanceof ProgesteroneBand
        || !row(observation).isEmpty();
  }

  /**
   * The row an observation belongs to, named by {@code curve.row.}; empty where it is drawn as a
   * level.
   */
  static String row(Observation observation) {
    if (observation instanceof Smear) {
      return "smear";
    }
    if (observation instanceof LhTest) {
      return "lh";
    }
    if (observation instanceof Vaginoscopy) {
      return "folds";
    }
    if (observation instanceof Sign sign) {
      return row(sign.sign());
    }
    if (observation instanceof OvaryScan) {
      return "scan";
    }
    return observation instanceof BreedingDone ? "bred" : "";
  }

  /** Each sign of a season has a row of its own; those of whelping and after share one. */
  static String row(SignKind sign) {
    return switch (sign) {
      case STANDS -> "stands";
      case REFUSES -> "refuses";
      case FLAGS -> "flags";
      case VULVA_SOFTENS -> "vulva";
      case BLEEDING_STOPS -> "blood";
      case FOUL_DISCHARGE -> "foul";
      case UNWELL -> "unwell";
      case THIRST, STRAINING, GREEN_DISCHARGE, WATERS_BROKEN, PUP_BORN, COLLAPSE, TREMBLING ->
          "other";
    };
  }

  /** What it showed, in a word or two. */
  static String brief(Observation observation, Words written) {
    if (observation instanceof Smear smear) {
      Double cornified = smear.cornifiedPercent();
      return cornified == null ? neutrophils(smear.neutrophils()) : Math.round(cornified) + "%";
    }
    if (observation instanceof LhTest test) {
      return test.positive() ? TEXTS.say("curve.positive") : TEXTS.say("curve.negative");
    }
    if (observation instanceof Vaginoscopy look) {
      return TEXTS.word("folds", look.folds());
    }
    if (observation instanceof Sign sign) {
      return TEXTS.say(
          sign.present() ? "curve.sign" : "curve.sign.absent", TEXTS.word("sign", sign.sign()));
    }
    if (observation instanceof OvaryScan scan) {
      return TEXTS.word("ovaries", scan.finding());
    }
    if (observation instanceof PregnancyScan scan) {
      return TEXTS.word("scan", scan.finding()) + fetuses(scan.fetuses());
    }
    if (observation instanceof Radiograph plate) {
      return TEXTS.say(plate.shown() ? "curve.skeletons" : "curve.no-skeleton")
          + fetuses(plate.fetuses());
    }
    if (observation instanceof BodyTemperature reading) {
      return CurveWords.plain(written, reading.celsius()) + " °C";
    }
    return observation instanceof BreedingDone done ? TEXTS.word("semen", done.semen()) : "";
  }

  /** What it showed, all of it. */
  static String whole(Observation observation, Words written) {
    if (observation instanceof Smear smear) {
      Double cornified = smear.cornifiedPercent();
      String cells =
          cornified == null
              ? ""
              : TEXTS.say("curve.cornified", CurveWords.plain(written, cornified));
      String white = neutrophils(smear.neutrophils());
      return cells + (cells.isEmpty() || white.isEmpty() ? "" : ", ") + white;
    }
    if (observation instanceof BreedingDone done) {
      String route = done.route() == Route.NATURAL ? "" : ", " + TEXTS.word("route", done.route());
      return TEXTS.word("semen", done.semen()) + route;
    }
    return brief(observation, written);
  }

  private static String fetuses(@Nullable Integer count) {
    return count == null ? "" : ", " + TEXTS.count("curve.fetuses", count);
  }

  private static String neutrophils(@Nullable Neutrophils neutrophils) {
    if (neutrophils == null) {
      return "";
    }
    return TEXTS.say("curve.neutrophils." + neutrophils.word());
  }

  /** The word written at its mark; empty where row and mark say it all. */
  static String label(Observation observation, Words written) {
    if (observation instanceof LhTest) {
      return "";
    }
    if (observation instanceof Sign sign) {
      return switch (sign.sign()) {
        case VULVA_SOFTENS -> TEXTS.say("curve.label.softens");
        case BLEEDING_STOPS -> TEXTS.say("curve.label.stops");
        case FOUL_DISCHARGE -> TEXTS.say("curve.label.discharge");
        case STANDS, REFUSES, FLAGS, UNWELL -> "";
        case THIRST, STRAINING, GREEN_DISCHARGE, WATERS_BROKEN, PUP_BORN, COLLAPSE, TREMBLING ->
            TEXTS.word("sign", sign.sign());
      };
    }
    return brief(observation, written);
  }

  /** Whether it says yes: a mark is filled then, hollow otherwise. */
  static boolean saysYes(Observation observation) {
    if (observation instanceof LhTest test) {
      return test.positive();
    }
    return !(observation instanceof Sign sign) || sign.present();
  }
}

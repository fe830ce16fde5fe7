package io.github.tiderule.api.picture;

import io.github.tiderule.rules.fact.BreedingDone;
import io.github.tiderule.rules.fact.LhTest;
import io.github.tiderule.rules.fact.Neutrophils;
import io.github.tiderule.rules.fact.Observation;
import io.github.tiderule.rules.fact.OvaryScan;
import io.github.tiderule.rules.fact.Progesterone;
import io.github.tiderule.rules.fact.ProgesteroneBand;
import io.github.tiderule.rules.fact.Route;
import io.github.tiderule.rules.fact.Sign;
import io.github.tiderule.rules.fact.Smear;
import io.github.tiderule.rules.fact.Vaginoscopy;
import org.jspecify.annotations.Nullable;

/** What an observation showed, in words: whole for a table, short for a row of the picture. */
final class FindingWords {

  private final CurveWords words;

  FindingWords(CurveWords words) {
    this.words = words;
  }

  /** As in {@code smear: 85 % cornified, no neutrophils}. */
  String of(Observation observation) {
    if (observation instanceof Progesterone value) {
      return "progesterone " + CurveWords.number(value) + ", " + value.series().words();
    }
    if (observation instanceof ProgesteroneBand band) {
      return words.of(band);
    }
    String name = row(observation);
    return (name.equals("bred") ? "bred" : name + ":") + " " + whole(observation);
  }

  /** The row an observation belongs to; empty where it is drawn as a level. */
  static String row(Observation observation) {
    if (observation instanceof Smear) {
      return "smear";
    }
    if (observation instanceof LhTest) {
      return "LH";
    }
    if (observation instanceof Vaginoscopy) {
      return "folds";
    }
    if (observation instanceof Sign) {
      return "signs";
    }
    if (observation instanceof OvaryScan) {
      return "scan";
    }
    return observation instanceof BreedingDone ? "bred" : "";
  }

  /** What it showed, in a word or two. */
  static String brief(Observation observation) {
    if (observation instanceof Smear smear) {
      Double cornified = smear.cornifiedPercent();
      return cornified == null ? neutrophils(smear.neutrophils()) : Math.round(cornified) + "%";
    }
    if (observation instanceof LhTest test) {
      return test.positive() ? "positive" : "negative";
    }
    if (observation instanceof Vaginoscopy look) {
      return look.folds().word();
    }
    if (observation instanceof Sign sign) {
      return (sign.present() ? "" : "not: ") + sign.sign().word().replace('-', ' ');
    }
    if (observation instanceof OvaryScan scan) {
      return scan.finding().word();
    }
    return observation instanceof BreedingDone done ? done.semen().word() : "";
  }

  private static String whole(Observation observation) {
    if (observation instanceof Smear smear) {
      Double cornified = smear.cornifiedPercent();
      String cells = cornified == null ? "" : CurveWords.plain(cornified) + " % cornified";
      String white = neutrophils(smear.neutrophils());
      return cells + (cells.isEmpty() || white.isEmpty() ? "" : ", ") + white;
    }
    if (observation instanceof BreedingDone done) {
      String route = done.route() == Route.NATURAL ? "" : ", " + done.route().word();
      return done.semen().word() + route;
    }
    return brief(observation);
  }

  private static String neutrophils(@Nullable Neutrophils neutrophils) {
    if (neutrophils == null) {
      return "";
    }
    return switch (neutrophils) {
      case NONE -> "no neutrophils";
      case FEW -> "few neutrophils";
      case MANY -> "many neutrophils";
    };
  }

  /** Whether it says yes: a mark is filled then, hollow otherwise. */
  static boolean saysYes(Observation observation) {
    if (observation instanceof LhTest test) {
      return test.positive();
    }
    return !(observation instanceof Sign sign) || sign.present();
  }
}

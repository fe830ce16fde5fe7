package io.github.tiderule.cases.library;

import io.github.tiderule.engine.CycleBuilder;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.semen.Insemination;
import java.util.function.UnaryOperator;

/**
 * One thing that is wrong, told to both.
 *
 * @param members what stands in the file beside what it must have, or instead of it
 * @param pointer where the reader must find it
 * @param code of both
 * @param built the same in Java
 * @param field where the record must find it
 */
record Slip(
    String members, String pointer, String code, UnaryOperator<CycleBuilder> built, String field) {

  @Override
  public String toString() {
    return field + " " + code;
  }

  static Slip of(
      String members,
      String pointer,
      String code,
      UnaryOperator<CycleBuilder> built,
      String field) {
    return new Slip(members, pointer, code, built, field);
  }

  /** A slip in the one observation there is. */
  static Slip seen(String members, String name, String code, Observation observation) {
    String part = name.isEmpty() ? "" : "/" + name.replace("[", "/").replace("]", "");
    return of(
        "'observations': [{'id': 'o1', 'at': '2027-01-08T07:00:00Z', %s}]".formatted(members),
        "/observations/0" + part,
        code,
        cycle -> cycle.add(observation.withId("o1")),
        "observations[0]" + (name.isEmpty() ? "" : "." + name));
  }

  static Slip plan(String member, String name, String code, SemenPlan plan) {
    return of(
        "'breeding': {'semen': 'chilled', %s}".formatted(member),
        "/breeding/" + name.replace(".", "/").replace("[", "/").replace("]", ""),
        code,
        cycle -> cycle.semen(plan),
        "semenPlan." + name);
  }

  static Slip inHand(String members, String name, String code, Insemination inHand) {
    return of(
        "'insemination': {%s}".formatted(members),
        "/insemination/" + name.replace(".", "/").replace("[", "/").replace("]", ""),
        code,
        cycle -> cycle.insemination(inHand),
        "insemination." + name);
  }

  static Slip her(String member, String name, String code, Female female) {
    return of(
        "'female': {%s}".formatted(member),
        "/female/" + name,
        code,
        cycle -> cycle.female(female),
        "female." + name);
  }

  static Slip earlier(String members, String name, String code, EarlierCycle earlier) {
    return of(
        "'female': {'earlierCycles': [{%s}]}".formatted(members),
        "/female/earlierCycles/0/" + name,
        code,
        cycle -> cycle.add(earlier),
        "earlierCycles[0]." + name);
  }

  static Slip ended(String members, String name, String code, Outcome outcome) {
    return of(
        "'outcome': {%s}".formatted(members),
        "/outcome/" + name,
        code,
        cycle -> cycle.outcome(outcome),
        "outcome." + name);
  }
}

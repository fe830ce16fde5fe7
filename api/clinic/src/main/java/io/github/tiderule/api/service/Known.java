package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import java.util.Optional;
import java.util.function.Function;

/**
 * Finds what a path names, as far as the person may see it. What may not be seen is not found, so
 * that nobody learns that it exists.
 */
public final class Known {

  /** A season and whose it is. */
  public record Season(Female female, Cycle cycle) {}

  /** Advice and whose it is. */
  public record Given(Female female, Cycle cycle, GivenAdvice advice) {}

  private final Call call;
  private final Ledger ledger;

  /** For one piece of work. */
  public Known(Call call, Ledger ledger) {
    this.call = call;
    this.ledger = ledger;
  }

  private <T> T part(String name, Function<String, Optional<T>> find) {
    return Optional.of(call.part(name))
        .filter(Keys::isKey)
        .flatMap(find)
        .orElseThrow(Refusal::notFound);
  }

  private Female visible(String key) {
    return ledger
        .females()
        .find(key)
        .filter(female -> call.person().maySee(female))
        .orElseThrow(Refusal::notFound);
  }

  /**
   * The female of a key that was sent.
   *
   * @throws Refusal if there is none, for who asks
   */
  public Female female(String key) {
    if (!Keys.isKey(key)) {
      throw Refusal.notFound();
    }
    return visible(key);
  }

  /** The female of the path. */
  public Female female() {
    return part("female", key -> Optional.of(visible(key)));
  }

  /** The season of the path. */
  public Season season() {
    Cycle cycle = part("cycle", key -> ledger.cycles().find(key));
    return new Season(visible(cycle.female()), cycle);
  }

  /**
   * The season of the path, for who may write in it.
   *
   * @throws Refusal if they may only look
   */
  public Season seasonToEnter() {
    Season season = season();
    mustEnter(season.female());
    return season;
  }

  /** The advice of the path. */
  public Given advice() {
    GivenAdvice advice = part("advice", key -> ledger.advices().find(key));
    Cycle cycle = ledger.cycles().find(advice.cycle()).orElseThrow(Refusal::notFound);
    return new Given(visible(cycle.female()), cycle, advice);
  }

  /** Refuses a change by who may only look. */
  public void mustEnter(Female female) {
    mustEnter(call.person(), female);
  }

  static void mustEnter(Person person, Female female) {
    if (!person.mayEnter(female)) {
      throw Refusal.notAllowed("You may look at her record, not write in it.");
    }
  }

  /** Refuses a decision by who is not her owner. */
  public void mustDecide(Female female) {
    mustDecide(call.person(), female);
  }

  static void mustDecide(Person person, Female female) {
    if (!person.mayDecide(female)) {
      throw Refusal.notAllowed("Only her owner decides this.");
    }
  }
}

package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.StudPlan;
import io.github.tiderule.engine.patience.Patience;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.parameter.Overlay;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/**
 * The engine: a cycle record in, advice out.
 *
 * <p>Immutable and safe for use by many threads; make one per process. It reads no clock, no file
 * and no random number: the same record gives the same advice.
 */
public final class Tiderule {

  /** Version of the engine, as stamped on every advice. */
  public static final String VERSION = "0.1.0";

  private final Tools tools;

  private Tiderule(Tools tools) {
    this.tools = tools;
  }

  /**
   * An engine over the rules that come with it.
   *
   * @throws IllegalStateException if the rule base is not whole
   */
  public static Tiderule create() {
    return new Tiderule(Tools.over(RuleBase.load()));
  }

  /**
   * The same engine with a clinic's own parameters.
   *
   * @throws IllegalArgumentException if this engine has an overlay already, or the overlay changes
   *     a parameter that is not here
   */
  public Tiderule with(Overlay overlay) {
    return new Tiderule(Tools.over(tools.rules().with(overlay)));
  }

  /** The rules, parameters and sources it speaks from. */
  public RuleBase rules() {
    return tools.rules();
  }

  /** The breeding-day plan for a season, with its reasons. Never throws on a legal record. */
  public Advice advise(CycleRecord cycle) {
    return Evaluation.of(tools, cycle).advice();
  }

  /** The plan as {@link #advise} gives it, with the means to ask why each rule spoke or did not. */
  public Reasoning reason(CycleRecord cycle) {
    return Evaluation.of(tools, cycle).reasoning();
  }

  /**
   * Has something answered while patience lasts: what runs for long on this thread asks again and
   * again whether it is enough, and gives up soon after. The engine itself reads no clock.
   *
   * @param enough whether whoever asks waits no longer; asked often, so it must answer fast
   * @throws CancellationException when it was enough before the answer was there
   */
  public static <T> T until(BooleanSupplier enough, Supplier<T> answer) {
    return Patience.during(enough, answer);
  }

  /**
   * Shares the services of one stud among several females.
   *
   * @param cycles by the name each female is to have in the answer; natural mating or fresh semen
   * @param services in time order, none before the moment of a cycle
   * @throws IllegalArgumentException if services are out of order, too many or past, or a cycle is
   *     of other semen
   */
  public StudPlan shareStud(Map<String, CycleRecord> cycles, List<Instant> services) {
    return new StudDivision(tools).divide(cycles, services);
  }
}

package io.github.tiderule.api.page;

import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.reasoning.RuleShown;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.engine.EngineStep;
import io.github.tiderule.rules.Concern;
import io.github.tiderule.rules.RuleBase;
import java.util.List;

/** The rules, each at an address that stays. */
public final class RulePages {

  private static final String PATH = "/rules";

  private RulePages() {}

  /**
   * All rules.
   *
   * @param steps what the engine reckons itself
   */
  public record Book(Frame frame, List<Concern> concerns, List<EngineStep> steps, String stamp) {}

  /** One rule. */
  public record Shown(Frame frame, RuleShown rule) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, PATH, Route.Need.NOBODY, RulePages::book),
        Route.page(Route.Method.GET, PATH + "/{rule}", Route.Need.NOBODY, RulePages::show));
  }

  private static Answer book(Call call) {
    Frame frame = Frame.of(call, "").titled("rules.title");
    RuleBase rules = call.environment().rules().get();
    return Templates.page(
        "rules",
        new Book(frame, rules.concerns(), List.of(EngineStep.values()), rules.fingerprint()));
  }

  private static Answer show(Call call) {
    Frame frame = Frame.of(call, "");
    RuleShown rule =
        RuleShown.of(call.part("rule"), call.environment().rules().get(), frame.words())
            .orElseThrow(Refusal::notFound);
    return Templates.page(
        "rule", new Shown(frame.titled("rule.title", rule.id(), rule.title()), rule));
  }
}

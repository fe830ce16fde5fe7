package io.github.tiderule.api.page;

import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the answer to a season as what people were told, by itself: when something is entered, when
 * whoever may write in it looks at it on a new day, and when a calendar of hers is asked for.
 */
final class Keeping {

  private static final int SEE_OTHER = 303;

  private Keeping() {}

  /** Keeps the new plan when a form was saved; what was saved stands whether or not it can be. */
  static void after(Call call, Answer answer, Function<Known, Known.@Nullable Season> find) {
    if (answer.status() == SEE_OTHER) {
      Known.Season season = call.read(ledger -> find.apply(new Known(call, ledger)));
      if (season != null) {
        quietly(call, season);
      }
    }
  }

  /** Keeps the answer to a season, unless it is kept already or cannot be. */
  static void quietly(Call call, Known.Season season) {
    Standing.Held held =
        call.read(ledger -> Standing.Held.of(ledger, season.female(), season.cycle()));
    if (!held.isKept(call.now())) {
      keep(call, held);
    }
  }

  /**
   * Where a season stands for whoever looks at it. What they are told is kept, if they may write.
   */
  static Standing looked(Call call, Standing.Held held) {
    Standing standing = Standing.of(held, call.now(), call.environment().reason());
    if (standing.kept() != null
        || !call.person().mayEnter(held.female())
        || !keep(call, held, standing)) {
      return standing;
    }
    Standing.Held now = call.read(ledger -> Standing.Held.of(ledger, held.female(), held.cycle()));
    return Standing.of(now, call.now(), call.environment().reason());
  }

  private static void keep(Call call, Standing.Held held) {
    try {
      keep(call, held, Standing.of(held, call.now(), call.environment().reason()));
    } catch (Refusal e) {
      // too much at once: the page works it out when it is looked at
    }
  }

  /** Whether it could be kept; where it could not, it is worked out again the next time. */
  private static boolean keep(Call call, Standing.Held held, Standing standing) {
    if (standing.kept() != null) {
      return false;
    }
    return call.changed(
        ledger -> {
          // another page may have kept it meanwhile
          if (last(held.latest()).equals(last(ledger.advices().latest(held.cycle().key(), 1)))) {
            Recording.of(call, ledger)
                .keep(
                    new Known.Season(held.female(), held.cycle()),
                    standing.file(),
                    standing.told().advice(),
                    AdviceJson.text(standing.told().advice(), Layout.ONE_LINE));
          }
        });
  }

  private static String last(List<GivenAdvice> latest) {
    return latest.isEmpty() ? "" : latest.get(0).key();
  }
}

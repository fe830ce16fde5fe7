package io.github.tiderule.api.page.frame;

import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.words.Texts;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Saves what a form sent, once, or shows it again with what is wrong. */
public final class Forms {

  /** Does what a form asks for; gives nothing when something typed is wrong, which is then said. */
  public interface Work {
    @Nullable Answer done(Ledger ledger);
  }

  private static final class Unfit extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unfit() {
      super(null, null, false, false);
    }
  }

  private static final int IN_THE_WAY = 409;
  private static final int CHANGED = 412;
  private static final int UNFIT = 422;

  private Forms() {}

  /**
   * Carries a form out.
   *
   * @param again the form once more, to be put right
   */
  public static Answer save(Call call, Typed typed, Work work, Function<Ledger, Answer> again) {
    Texts texts = Texts.ofPages(Locale.ROOT);
    try {
      return call.changeOnce(
          typed.value("once"),
          ledger -> {
            Answer answer = work.done(ledger);
            if (answer == null) {
              throw new Unfit();
            }
            return saved(answer, typed.value("once"));
          });
    } catch (Unfit e) {
      // what is wrong is said already
    } catch (Refusal e) {
      if (e.isKeyUsedOtherwise()) {
        typed.refuse(Typed.NO_FIELD, texts.say("fault.sent-before"));
      } else if (e.status() == CHANGED) {
        typed.refuse(Typed.NO_FIELD, texts.say("fault.changed"));
      } else if (e.status() == UNFIT && !e.problems().isEmpty()) {
        typed.refuse(e.problems(), texts);
      } else if (e.status() == IN_THE_WAY) {
        typed.refuse(Typed.NO_FIELD, texts.say("fault.in-the-way"));
      } else {
        throw e;
      }
    }
    return call.read(again);
  }

  /** Tells the page that follows which form was saved, so that its draft need not be kept. */
  private static Answer saved(Answer answer, String once) {
    String location = answer.location();
    return location == null || !location.contains("?")
        ? answer
        : Answer.seeOther(location + "&saved=" + once);
  }

  /**
   * Refuses a change of something that was changed since the form was shown.
   *
   * @throws Refusal if it was
   */
  public static void mustMatch(Typed typed, int version) {
    if (!typed.value("was").equals(Integer.toString(version))) {
      throw Refusal.changed();
    }
  }
}

package io.github.tiderule.api.page;

import io.github.tiderule.api.page.form.KennelForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Revision;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What is the same for every season of a kennel: clinic, courier, laboratory and travel. */
public final class KennelPages {

  private static final String PATH = "/kennel";
  private static final int UNFIT = 422;

  private KennelPages() {}

  /** The form. */
  public record Form(Frame frame, Typed typed) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, PATH, Route.Need.WRITER, KennelPages::show),
        Route.page(Route.Method.POST, PATH, Route.Need.WRITER, KennelPages::change));
  }

  /** What the kennel of whoever asks has; nothing where it was never said. */
  static Node.Members of(Call call, Ledger ledger) {
    return ledger
        .kennels()
        .of(call.person().key())
        .map(Revision::document)
        .map(Documents::of)
        .orElse(new Node.Members(Map.of()));
  }

  private static int version(Call call, Ledger ledger) {
    return ledger.kennels().of(call.person().key()).map(Revision::version).orElse(0);
  }

  private static Answer page(Call call, int status, Typed typed) {
    return Templates.page(
        status, "kennel", new Form(Frame.of(call, "").titled("kennel.title"), typed));
  }

  private static Answer show(Call call) {
    return call.read(
        ledger ->
            page(
                call,
                200,
                KennelForm.of(Texts.ofPages(Locale.ROOT))
                    .filled(of(call, ledger))
                    .fill("was", Integer.toString(version(call, ledger)))));
  }

  private static Answer change(Call call) {
    Typed typed = Typed.of(call.form());
    return Forms.save(
        call,
        typed,
        ledger -> {
          Node.Members said = KennelForm.of(Texts.ofPages(Locale.ROOT)).read(typed);
          if (said == null) {
            return null;
          }
          int version = version(call, ledger);
          Forms.mustMatch(typed, version);
          ledger.kennels().change(call.person().key(), version, NodeText.of(said), call.now());
          return Answer.seeOther("/?done=kennel");
        },
        ledger -> page(call, UNFIT, typed));
  }
}

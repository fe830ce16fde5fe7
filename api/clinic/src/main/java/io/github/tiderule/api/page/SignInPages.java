package io.github.tiderule.api.page;

import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.service.SigningIn;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;

/** Signing in and out, in a record with users. */
public final class SignInPages {

  private static final String PATH = "/sign-in";
  private static final int NOT_SIGNED_IN = 401;

  /** A path of this site, and of no other. */
  private static final Pattern OWN = Pattern.compile("/(?:[!-.0-\\[\\]-~][!-\\[\\]-~]{0,300})?");

  private SignInPages() {}

  /**
   * Asks who it is.
   *
   * @param next where to go then
   */
  public record SignIn(Frame frame, Typed typed, String next) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, PATH, Route.Need.NOBODY, SignInPages::ask),
        Route.page(Route.Method.POST, PATH, Route.Need.NOBODY, SignInPages::begin),
        Route.page(Route.Method.POST, "/sign-out", Route.Need.ANYBODY, SignInPages::end));
  }

  /** Sends somebody to sign in, and back to what they wanted afterwards. */
  static Answer wanted(Call call) {
    String wanted = call.isSafe() ? call.target() : referrer(call);
    return Answer.seeOther(PATH + "?next=" + URLEncoder.encode(wanted, StandardCharsets.UTF_8));
  }

  /** A form sent when the session was over: back to the form, where the draft is kept. */
  private static String referrer(Call call) {
    try {
      String path = URI.create(call.header("Referer").orElse("/")).getRawPath();
      return path == null ? "/" : path;
    } catch (IllegalArgumentException e) {
      return "/";
    }
  }

  private static String own(String next) {
    return OWN.matcher(next).matches() ? next : "/";
  }

  private static Answer ask(Call call) {
    if (call.caller().known() != null) {
      return Answer.seeOther("/");
    }
    return ask(call, 200, Typed.nothing(), call.query("next").orElse("/"));
  }

  private static Answer ask(Call call, int status, Typed typed, String next) {
    Texts texts = Texts.ofPages(java.util.Locale.ROOT);
    return Templates.page(
        status, "sign-in", new SignIn(Frame.of(call, texts.say("signin.title")), typed, own(next)));
  }

  private static Answer begin(Call call) {
    Typed typed = Typed.of(call.form());
    if (call.caller().known() != null) {
      return Answer.seeOther("/");
    }
    try {
      SigningIn.begin(call, typed.value("name"), typed.value("password"));
    } catch (Refusal e) {
      Texts texts = Texts.ofPages(java.util.Locale.ROOT);
      boolean wrong = e.status() == NOT_SIGNED_IN;
      typed.refuse("name", texts.say(wrong ? "signin.wrong" : "signin.often"));
      return ask(call, e.status(), typed, typed.value("next"));
    }
    return Answer.seeOther(own(typed.value("next")));
  }

  private static Answer end(Call call) {
    SigningIn.end(call);
    return Answer.seeOther(PATH);
  }
}

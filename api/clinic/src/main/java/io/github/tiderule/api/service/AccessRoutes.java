package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Attempts;
import io.github.tiderule.api.access.Audit;
import io.github.tiderule.api.access.Passwords;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Sessions;
import io.github.tiderule.api.access.Tokens;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.service.http.Settings;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/** Signing in and out, tokens for programs, and the audit log. */
final class AccessRoutes {

  private static final String SESSION = "/v1/session";
  private static final String TOKENS = "/v1/tokens";
  private static final int LONGEST_LABEL = 120;

  private final Settings settings;

  AccessRoutes(Settings settings) {
    this.settings = settings;
  }

  List<Route> all() {
    return List.of(
        new Route(Route.Method.POST, SESSION, Route.Need.NOBODY, this::signIn),
        new Route(Route.Method.GET, SESSION, Route.Need.ANYBODY, AccessRoutes::session),
        new Route(Route.Method.DELETE, SESSION, Route.Need.ANYBODY, AccessRoutes::signOut),
        new Route(Route.Method.GET, TOKENS, Route.Need.ANYBODY, AccessRoutes::tokens),
        new Route(Route.Method.POST, TOKENS, Route.Need.ANYBODY, this::issue),
        new Route(
            Route.Method.DELETE, TOKENS + "/{token}", Route.Need.ANYBODY, AccessRoutes::revoke),
        new Route(Route.Method.GET, "/v1/audit", Route.Need.ANYBODY, AccessRoutes::audit));
  }

  private Answer signIn(Call call) {
    Body body = call.body();
    String name = body.required("name").text(Attempts.LONGEST_NAME);
    String password = body.required("password").text(Passwords.LONGEST);
    body.end();
    if (!settings.usersNeeded()) {
      throw Refusal.notAllowed("This record has no users; nobody needs to sign in.");
    }
    Sessions.Begun begun = SigningIn.begin(call, Body.there(name), Body.there(password));
    return Answer.made(
        shown(
            call.read(ledger -> People.of(ledger).find(begun.session().person())).orElseThrow(),
            Optional.of(begun.session())),
        SESSION);
  }

  private static String shown(Person person, Optional<Sessions.Session> session) {
    return Document.text(
        Layout.ONE_LINE,
        json ->
            json.object("person", person, one -> Shown.person(json, one))
                .text("csrf", session.map(Sessions.Session::csrf).orElse(null))
                .instant(
                    "expiresAt",
                    session.map(one -> one.expiresAt().atOffset(ZoneOffset.UTC)).orElse(null)));
  }

  private static Answer session(Call call) {
    return Answer.json(shown(call.person(), Optional.ofNullable(call.caller().session())));
  }

  private static Answer signOut(Call call) {
    SigningIn.end(call);
    return Answer.done();
  }

  private static Answer tokens(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(Tokens.of(ledger).of(call.person(), wanted), shown::token);
        });
  }

  private Answer issue(Call call) {
    Body body = call.body();
    String label = body.required("label").text(LONGEST_LABEL);
    body.end();
    if (!settings.usersNeeded()) {
      throw Refusal.notAllowed("This record has no users; nobody needs a token.");
    }
    return call.change(
        ledger -> {
          Tokens.Issued issued =
              Tokens.of(ledger).issue(call.person(), Body.there(label), call.now());
          note(call, ledger, "token-issued", issued.token());
          Shown shown = new Shown(call.person(), ledger);
          return Answer.made(
              Document.text(
                  Layout.ONE_LINE,
                  json -> {
                    shown.token(json, issued.token());
                    json.text("secret", issued.secret());
                  }),
              TOKENS + "/" + issued.token().key());
        });
  }

  private static Answer revoke(Call call) {
    return call.change(
        ledger -> {
          Tokens tokens = Tokens.of(ledger);
          Tokens.Token token =
              Optional.of(call.part("token"))
                  .filter(Keys::isKey)
                  .flatMap(key -> tokens.find(call.person(), key))
                  .orElseThrow(Refusal::notFound);
          tokens.revoke(token, call.now());
          note(call, ledger, "token-revoked", token);
          return Answer.done();
        });
  }

  private static void note(Call call, Ledger ledger, String deed, Tokens.Token token) {
    Audit.of(ledger)
        .note(call.person(), deed, token.key(), null, call.caller().address(), call.now());
  }

  private static Answer audit(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(Audit.of(ledger).concerning(call.person(), wanted), shown::line);
        });
  }
}

package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Attempts;
import io.github.tiderule.api.access.Audit;
import io.github.tiderule.api.access.Passwords;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Sessions;
import io.github.tiderule.api.access.Tokens;
import io.github.tiderule.api.json.Document;
import io.github.tiderule.api.json.Layout;
import io.github.tiderule.api.record.Keys;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Page;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/** Signing in and out, tokens for programs, and the audit log. */
final class AccessRoutes {

  private static final String SESSION = "/v1/session";
  private static final String TOKENS = "/v1/tokens";
  private static final int LONGEST_NAME = 120;

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
    String name = body.required("name").text(LONGEST_NAME);
    String password = body.required("password").text(Passwords.LONGEST);
    body.end();
    if (!settings.usersNeeded()) {
      throw Refusal.notAllowed("This record has no users; nobody needs to sign in.");
    }
    Person person = authenticated(call, Body.there(name), Body.there(password));
    return call.change(
        ledger -> {
          Sessions.Begun begun = Sessions.of(ledger).begin(person, call.now());
          Audit.of(ledger)
              .note(person, "signed-in", null, null, call.caller().address(), call.now());
          call.context().header("Set-Cookie", cookie(begun.secret(), Sessions.LASTS));
          return Answer.made(shown(person, Optional.of(begun.session())), SESSION);
        });
  }

  private String cookie(String secret, Duration lasts) {
    return Guard.COOKIE
        + "="
        + secret
        + "; Path=/; HttpOnly; SameSite=Strict; Max-Age="
        + lasts.toSeconds()
        + (settings.behindTls() ? "; Secure" : "");
  }

  private static Person authenticated(Call call, String name, String password) {
    Attempts attempts = call.environment().attempts();
    List<String> counted = List.of("name " + name, "address " + call.caller().address());
    for (String what : counted) {
      Duration wait = attempts.wait(what, call.now());
      if (wait.compareTo(Duration.ZERO) > 0) {
        throw Refusal.tooOften(wait);
      }
    }
    Optional<Person> person =
        call.read(ledger -> People.of(ledger).named(name)).filter(one -> one.closedAt() == null);
    Optional<String> hash =
        person.flatMap(one -> call.read(ledger -> People.of(ledger).password(one.key())));
    Passwords passwords = call.environment().passwords();
    boolean right;
    if (hash.isPresent()) {
      right = passwords.check(password, hash.get());
    } else {
      passwords.checkNobodys(password);
      right = false;
    }
    if (!right) {
      counted.forEach(what -> attempts.failed(what, call.now()));
      call.change(
          ledger -> {
            Audit.of(ledger)
                .note(
                    person.orElse(null),
                    "sign-in-failed",
                    null,
                    null,
                    call.caller().address(),
                    call.now());
            return Answer.done();
          });
      throw Refusal.notSignedIn("Name or password is wrong.");
    }
    counted.forEach(attempts::succeeded);
    return person.orElseThrow();
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
    Sessions.Session session = call.caller().session();
    if (session == null) {
      throw Refusal.notFound();
    }
    return call.change(
        ledger -> {
          Sessions.of(ledger).end(session);
          call.context().header("Set-Cookie", Guard.COOKIE + "=; Path=/; HttpOnly; Max-Age=0");
          Audit.of(ledger)
              .note(call.person(), "signed-out", null, null, call.caller().address(), call.now());
          return Answer.done();
        });
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
    String label = body.required("label").text(LONGEST_NAME);
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

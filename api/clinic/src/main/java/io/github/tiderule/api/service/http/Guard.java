package io.github.tiderule.api.service.http;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.access.Secrets;
import io.github.tiderule.api.access.Sessions;
import io.github.tiderule.api.access.Tokens;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Lets in who may come in.
 *
 * <p>Without users, everybody on this machine is the one person of the record; so a page of another
 * site, or a name that only points here, must not speak to it: Host and Origin are compared with
 * the loopback names. With users, a change that comes with a session must carry the session's token
 * and, if it names an Origin, the same one as its Host.
 */
public final class Guard {

  private static final String COOKIE = "tiderule_session";
  static final String CSRF_HEADER = "X-CSRF-Token";

  private static final String BEARER = "bearer ";
  private static final Set<String> OWN_SITE = Set.of("same-origin", "none");

  private final Settings settings;
  private final Environment environment;
  private final IntSupplier port;

  /**
   * @param port the port in use, once it is known
   */
  public Guard(Settings settings, Environment environment, IntSupplier port) {
    this.settings = settings;
    this.environment = environment;
    this.port = port;
  }

  static String cookie(String secret, Duration lasts, boolean secure) {
    return COOKIE
        + "="
        + secret
        + "; Path=/; HttpOnly; SameSite=Strict; Max-Age="
        + lasts.toSeconds()
        + (secure ? "; Secure" : "");
  }

  /** Sets what every answer says to a browser. */
  public void protect(Context context) {
    context
        .header("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'")
        .header("X-Content-Type-Options", "nosniff")
        .header("X-Frame-Options", "DENY")
        .header("Referrer-Policy", "no-referrer")
        .header("Cross-Origin-Resource-Policy", "same-origin")
        .header("Cache-Control", "no-store");
    if (settings.behindTls()) {
      context.header("Strict-Transport-Security", "max-age=31536000");
    }
  }

  /** Sets what every page says to a browser: it takes scripts, styles and pictures from here. */
  public void protectPage(Context context) {
    protect(context);
    context
        .header(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
                + " connect-src 'self'; form-action 'self'; base-uri 'none';"
                + " frame-ancestors 'none'")
        // with no-referrer, browsers send forms with the Origin "null"
        .header("Referrer-Policy", "same-origin");
  }

  /**
   * Who asks, if they may.
   *
   * @throws Refusal if they may not
   */
  public Caller admit(Context context, Route route) {
    refuseForeign(context, route);
    String address = address(context);
    if (!settings.usersNeeded()) {
      Person local =
          environment
              .store()
              .read(ledger -> People.of(ledger).find(Person.LOCAL))
              .orElseThrow(() -> new IllegalStateException("the record lacks its one person"));
      return allowed(new Caller(local, null, address), route);
    }
    Caller caller = signedIn(context, address);
    if (caller.session() != null && !route.method().isSafe()) {
      String sent = route.isPage() ? csrf(context) : context.header(CSRF_HEADER);
      if (sent == null || !Secrets.same(sent, caller.session().csrf())) {
        throw Refusal.foreign("A change with a session must carry its " + CSRF_HEADER + ".");
      }
    }
    return allowed(caller, route);
  }

  private static @Nullable String csrf(Context context) {
    List<String> sent = FormBody.of(context).get(FormBody.CSRF);
    return sent == null ? null : sent.get(0);
  }

  private static Caller allowed(Caller caller, Route route) {
    switch (route.need()) {
      case NOBODY -> {}
      case ANYBODY -> caller.person();
      case WRITER -> {
        if (!caller.person().role().mayWrite()) {
          throw Refusal.notAllowed("A reader changes nothing.");
        }
      }
      case VET -> {
        if (caller.person().role() != Role.VET) {
          throw Refusal.notAllowed("Only a vet may do this.");
        }
      }
    }
    return caller;
  }

  private Caller signedIn(Context context, String address) {
    String authorization = context.header("Authorization");
    if (authorization != null) {
      if (!authorization.toLowerCase(Locale.ROOT).startsWith(BEARER)) {
        throw Refusal.notSignedIn("Authorization must be a bearer token.");
      }
      String secret = authorization.substring(BEARER.length()).strip();
      return environment
          .store()
          .read(
              ledger ->
                  Tokens.of(ledger)
                      .find(secret)
                      .flatMap(token -> open(People.of(ledger), token.person())))
          .map(person -> new Caller(person, null, address))
          .orElseThrow(() -> Refusal.notSignedIn("The token is unknown or revoked."));
    }
    String secret = context.cookie(COOKIE);
    if (secret == null) {
      return new Caller(null, null, address);
    }
    return environment
        .store()
        .read(
            ledger ->
                Sessions.of(ledger)
                    .find(secret, environment.clock().instant())
                    .flatMap(
                        session ->
                            open(People.of(ledger), session.person())
                                .map(person -> new Caller(person, session, address))))
        .orElseGet(() -> new Caller(null, null, address));
  }

  private static Optional<Person> open(People people, String key) {
    return people.find(key).filter(person -> person.closedAt() == null);
  }

  private String address(Context context) {
    String forwarded = settings.behindTls() ? context.header("X-Forwarded-For") : null;
    if (forwarded == null) {
      return context.ip();
    }
    // the last hop is the one our own front server saw; what stands before it anybody can write
    String last = forwarded.substring(forwarded.lastIndexOf(',') + 1).strip();
    return last.length() <= 64 ? last : context.ip();
  }

  private void refuseForeign(Context context, Route route) {
    String host = context.header("Host");
    String origin = context.header("Origin");
    if (settings.usersNeeded()) {
      if (origin != null && !route.method().isSafe() && !sameAuthority(origin, host)) {
        throw Refusal.foreign("Origin and Host differ.");
      }
      return;
    }
    List<String> own =
        List.of(
            "127.0.0.1:" + port.getAsInt(),
            "localhost:" + port.getAsInt(),
            "[::1]:" + port.getAsInt());
    if (host == null || !own.contains(host.toLowerCase(Locale.ROOT))) {
      throw Refusal.foreign("Host is not this machine.");
    }
    if (origin != null
        && own.stream().noneMatch(name -> origin.equalsIgnoreCase("http://" + name))) {
      throw Refusal.foreign("Origin is another site.");
    }
    String site = context.header("Sec-Fetch-Site");
    if (site != null && !OWN_SITE.contains(site)) {
      throw Refusal.foreign("The request was made by a page of another site.");
    }
  }

  private static boolean sameAuthority(String origin, @Nullable String host) {
    int slashes = origin.indexOf("://");
    return host != null && slashes > 0 && origin.substring(slashes + 3).equalsIgnoreCase(host);
  }
}

package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Attempts;
import io.github.tiderule.api.access.Audit;
import io.github.tiderule.api.access.Passwords;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Sessions;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import java.time.Duration;
import java.util.Optional;

/** Begins and ends the session of a person. */
public final class SigningIn {

  private SigningIn() {}

  /**
   * Begins a session, and has the answer set its cookie.
   *
   * @throws Refusal if name and password are not right, or were tried too often
   */
  public static Sessions.Begun begin(Call call, String name, String password) {
    Person person = authenticated(call, name, password);
    return call.environment()
        .store()
        .change(
            ledger -> {
              Sessions.Begun begun = Sessions.of(ledger).begin(person, call.now());
              Audit.of(ledger)
                  .note(person, Audit.SIGNED_IN, null, null, call.caller().address(), call.now());
              call.setCookie(begun.secret(), Sessions.LASTS);
              return begun;
            });
  }

  private static Person authenticated(Call call, String name, String password) {
    Attempts attempts = call.environment().attempts();
    String address = call.caller().address();
    boolean isNobodys =
        name.length() > Attempts.LONGEST_NAME || password.length() > 2 * Passwords.LONGEST;
    String counted = isNobodys ? "" : name;
    Duration wait =
        attempts.begin(counted, address, isUsual(call, attempts, counted, address), call.now());
    if (wait.compareTo(Duration.ZERO) > 0) {
      throw Refusal.tooOften(wait);
    }
    Optional<Person> person =
        isNobodys
            ? Optional.empty()
            : call.read(ledger -> People.of(ledger).named(name))
                .filter(one -> one.closedAt() == null);
    if (!isRight(call, person, isNobodys ? "" : password)) {
      call.change(
          ledger -> {
            Audit.of(ledger)
                .note(person.orElse(null), "sign-in-failed", null, null, address, call.now());
            return Answer.done();
          });
      throw Refusal.notSignedIn("Name or password is wrong.");
    }
    attempts.succeeded(name, address);
    return person.orElseThrow();
  }

  private static boolean isRight(Call call, Optional<Person> person, String password) {
    Passwords passwords = call.environment().passwords();
    Optional<String> hash =
        person.flatMap(one -> call.read(ledger -> People.of(ledger).password(one.key())));
    if (hash.isPresent()) {
      return passwords.check(password, hash.get());
    }
    passwords.checkNobodys(password);
    return false;
  }

  /** Where many tried a name, whoever signed in from there before is not held up by them. */
  private static boolean isUsual(Call call, Attempts attempts, String name, String address) {
    return attempts.isTriedByMany(name)
        && call.read(
            ledger ->
                People.of(ledger)
                    .named(name)
                    .filter(person -> Audit.of(ledger).signedInFrom(person, address))
                    .isPresent());
  }

  /**
   * Ends the session of who asks, and has the answer take its cookie away.
   *
   * @throws Refusal if there is none
   */
  public static void end(Call call) {
    Sessions.Session session = call.caller().session();
    if (session == null) {
      throw Refusal.notFound();
    }
    call.change(
        ledger -> {
          Sessions.of(ledger).end(session);
          call.setCookie("", Duration.ZERO);
          Audit.of(ledger)
              .note(call.person(), "signed-out", null, null, call.caller().address(), call.now());
          return Answer.done();
        });
  }
}

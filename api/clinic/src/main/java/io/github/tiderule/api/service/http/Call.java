package io.github.tiderule.api.service.http;

import io.github.tiderule.api.access.Audit;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Secrets;
import io.github.tiderule.api.record.KeptAnswers;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.store.Unavailable;
import io.github.tiderule.api.record.table.Conflict;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.format.cycle.CycleFile;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.eclipse.jetty.http.HttpException;
import org.jspecify.annotations.Nullable;

/** One request, by one person, and the means to answer it. */
public final class Call implements Hand {

  private static final Pattern IDEMPOTENCY_KEY = Pattern.compile("[!-~]{1,200}");
  private static final Pattern LIMIT = Pattern.compile("[1-9][0-9]{0,2}");
  private static final Pattern PLACE = Pattern.compile("[0-9a-z]{1,26}");

  /** A name or an address, with its port: what a Host may be to be written into an address. */
  private static final Pattern HOST =
      Pattern.compile("(?:[A-Za-z0-9.-]{1,253}|\\[[0-9A-Fa-f:.]{2,45}])(?::[0-9]{1,5})?");

  private static final int MOST_DROPPED = 4 << 20;

  private static final int LONGEST_PAGE = 200;

  private final Context context;
  private final Environment environment;
  private final Caller caller;
  private final Instant now;
  private final boolean secure;

  /**
   * @param secure whether browsers speak TLS with the server before this one
   */
  public Call(Context context, Environment environment, Caller caller, boolean secure) {
    this.context = context;
    this.environment = environment;
    this.caller = caller;
    this.secure = secure;
    this.now = environment.clock().instant().truncatedTo(ChronoUnit.MILLIS);
  }

  /** What it is answered with. */
  public Environment environment() {
    return environment;
  }

  /** Who asks, as far as is known. */
  public Caller caller() {
    return caller;
  }

  /** Who asks. */
  @Override
  public Person person() {
    return caller.person();
  }

  /** The same request, answered on behalf of somebody who is not signed in. */
  public Call as(Person person) {
    return new Call(context, environment, new Caller(person, null, caller.address()), secure);
  }

  /** The moment it is answered at. */
  @Override
  public Instant now() {
    return now;
  }

  /**
   * A part of the path.
   *
   * @throws Refusal if it holds what nothing is called by
   */
  public String part(String name) {
    String part = context.pathParam(name);
    if (part.chars().anyMatch(Character::isISOControl)) {
      throw Refusal.notFound();
    }
    return part;
  }

  /** A header that was sent. */
  public Optional<String> header(String name) {
    return Optional.ofNullable(context.header(name));
  }

  /** A part of the query. */
  public Optional<String> query(String name) {
    return Optional.ofNullable(context.queryParam(name));
  }

  /** Every part of the query. */
  public Map<String, List<String>> queries() {
    return context.queryParamMap();
  }

  /** Whether nothing is to be changed by it. */
  public boolean isSafe() {
    return context.method().name().equals("GET");
  }

  /** The path asked for, with its query. */
  public String target() {
    String query = context.queryString();
    return query == null ? context.path() : context.path() + "?" + query;
  }

  /** The values of each field of the form that was sent. */
  public Map<String, List<String>> form() {
    return FormBody.of(context);
  }

  /** Lets a browser take the style that stands in the answer; nothing else of it acts. */
  public void mayStyleItself() {
    context.header(
        "Content-Security-Policy",
        "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'");
  }

  /** Lets a browser keep the answer, which must never change. */
  public void mayBeKept() {
    context.header("Cache-Control", "private, max-age=31536000, immutable");
  }

  /** Lets whoever asks keep the answer, and ask whether it changed. */
  public void mayBeChecked() {
    context.header("Cache-Control", "private, no-cache");
  }

  /** Keeps the answer out of lists of what there is, and its address from whoever it links to. */
  public void mayNotBeListed() {
    context.header("X-Robots-Tag", "noindex, nofollow").header("Referrer-Policy", "no-referrer");
  }

  /** The answer, or that it is the one that whoever asks has already. */
  public Answer unlessKnown(Answer answer) {
    String tag = answer.tag();
    boolean known =
        tag != null
            && Arrays.stream(header("If-None-Match").orElse("").split(","))
                .map(one -> one.strip().replaceFirst("^W/", ""))
                .anyMatch(one -> one.equals(tag) || one.equals("*"));
    return known ? answer.unchanged() : answer;
  }

  /**
   * How this service is reached by whoever asks: scheme, name and port.
   *
   * @throws Refusal when they do not say it
   */
  public String origin() {
    String host =
        header("Host")
            .filter(one -> HOST.matcher(one).matches())
            .orElseThrow(() -> Refusal.query("Host is missing."));
    return (secure ? "https://" : "http://") + host;
  }

  /** Gives a browser the secret of its session to keep, for so long; zero makes it forget. */
  public void setCookie(String secret, Duration lasts) {
    context.header("Set-Cookie", Guard.cookie(secret, lasts, secure));
  }

  /** Which page of a list is wanted. */
  public Page.Wanted page() {
    String limit = context.queryParam("limit");
    String after = context.queryParam("after");
    if (limit != null && !LIMIT.matcher(limit).matches()) {
      throw Refusal.query("limit is not a number from 1 to " + LONGEST_PAGE + ".");
    }
    if (after != null && !PLACE.matcher(after).matches()) {
      throw Refusal.query("after is not a place in a list; take it from \"next\" of a page.");
    }
    return new Page.Wanted(
        after == null ? Page.Wanted.FIRST.after() : after,
        limit == null
            ? Page.Wanted.FIRST.limit()
            : Math.min(Integer.parseInt(limit), LONGEST_PAGE));
  }

  /** The bytes sent, when they are said to be JSON. */
  public byte[] bytes() {
    return bytes("application/json");
  }

  /** The bytes sent, when they are said to be of a media type. */
  public byte[] bytes(String type) {
    if (!isOf(type)) {
      throw Refusal.contentType();
    }
    return anyBytes(context);
  }

  /** Whether what was sent is said to be of a media type. */
  public boolean isOf(String wanted) {
    String type = context.contentType();
    String plain = type == null ? "" : type.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
    return plain.equals(wanted);
  }

  /** Whether a media type is asked for by its name. */
  public boolean accepts(String type) {
    return Arrays.stream(header("Accept").orElse("").split(",", -1))
        .map(one -> one.split(";", 2)[0].strip().toLowerCase(Locale.ROOT))
        .anyMatch(type::equals);
  }

  static byte[] anyBytes(Context context) {
    try (InputStream in = context.req().getInputStream()) {
      byte[] bytes = in.readNBytes(CycleFile.MOST_BYTES + 1);
      if (bytes.length > CycleFile.MOST_BYTES) {
        // who is still sending does not hear a refusal: some of the rest is taken and dropped
        in.readNBytes(MOST_DROPPED);
        throw Refusal.tooLarge(CycleFile.MOST_BYTES);
      }
      return bytes;
    } catch (IOException | HttpException.RuntimeException e) {
      throw Refusal.query("What was sent breaks off, or cannot be read to its end.");
    }
  }

  /** The object sent. */
  public Body body() {
    return Body.of(bytes());
  }

  /** Whether nothing was sent. */
  public boolean isEmpty() {
    return context.req().getContentLengthLong() <= 0 && context.header("Transfer-Encoding") == null;
  }

  /**
   * Refuses a change of another version than the present one.
   *
   * @throws Refusal when If-Match is missing or names another version
   */
  public void mustMatch(int version) {
    String match = header("If-Match").orElseThrow(Refusal::versionNeeded);
    boolean matches =
        Arrays.stream(match.split(","))
            .map(String::strip)
            .anyMatch(tag -> tag.equals("*") || tag.equals(Answer.tagOf(version)));
    if (!matches) {
      throw Refusal.changed();
    }
  }

  /** Reads from the record. */
  public <T extends @Nullable Object> T read(Function<Ledger, T> work) {
    return environment.store().read(work);
  }

  /**
   * Changes the record.
   *
   * @throws Refusal when the record is not as the change takes it to be
   */
  public Answer change(Function<Ledger, Answer> work) {
    try {
      return environment.store().change(work);
    } catch (Conflict e) {
      throw Refusal.of(e);
    }
  }

  /** Changes the record where it can be, and says whether it could. */
  public boolean changed(Consumer<Ledger> work) {
    try {
      change(
          ledger -> {
            work.accept(ledger);
            return Answer.done();
          });
      return true;
    } catch (Refusal | Unavailable e) {
      return false;
    }
  }

  /** Changes the record, once for each Idempotency-Key. */
  public Answer changeOnce(byte[] sent, Function<Ledger, Answer> work) {
    Optional<String> key = header("Idempotency-Key");
    if (key.isEmpty()) {
      return change(work);
    }
    if (!IDEMPOTENCY_KEY.matcher(key.get()).matches()) {
      throw Refusal.query("Idempotency-Key is not 1 to 200 visible ASCII characters.");
    }
    return change(ledger -> once(ledger, key.get(), sent, work));
  }

  /** Changes the record as a form says, once for each key of such a form. */
  public Answer changeOnce(String key, Function<Ledger, Answer> work) {
    if (!IDEMPOTENCY_KEY.matcher(key).matches()) {
      throw Refusal.query("The form lacks its key. Load the page again.");
    }
    Map<String, List<String>> fields = new TreeMap<>(form());
    // a session that was begun anew meanwhile makes no other form of it
    fields.remove(FormBody.CSRF);
    byte[] sent = fields.toString().getBytes(StandardCharsets.UTF_8);
    return change(ledger -> once(ledger, key, sent, work));
  }

  private Answer once(Ledger ledger, String key, byte[] sent, Function<Ledger, Answer> work) {
    KeptAnswers kept = ledger.keptAnswers();
    String fingerprint =
        Secrets.digest(
            context.method().name()
                + ' '
                + context.path()
                + '\n'
                + new String(sent, StandardCharsets.ISO_8859_1));
    Optional<KeptAnswers.Kept> before = kept.take(person().key(), key, fingerprint, now);
    if (before.isPresent()) {
      KeptAnswers.Kept answer = before.get();
      if (!answer.fingerprint().equals(fingerprint)) {
        throw Refusal.keyUsedOtherwise();
      }
      context.header("Idempotent-Replayed", "true");
      return new Answer(
          answer.status(), "application/json", answer.body(), answer.location(), answer.tag());
    }
    Answer answer = work.apply(ledger);
    kept.keep(
        person().key(),
        key,
        new KeptAnswers.Kept(
            fingerprint, answer.status(), answer.body(), answer.location(), answer.tag()));
    return answer;
  }

  @Override
  public void note(Ledger ledger, String deed, String about, String female) {
    Audit.of(ledger).note(person(), deed, about, female, caller.address(), now);
  }
}

package io.github.tiderule.api.service.http;

import io.github.tiderule.api.record.table.Conflict;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A request is refused; the refusal is written as RFC 9457 says. */
public final class Refusal extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** The media type of a refusal, as RFC 9457 has it. */
  public static final String CONTENT_TYPE = "application/problem+json";

  private static final String KEY_USED_OTHERWISE = "key-used-otherwise";
  private static final String TYPES = "tag:tiderule.github.io,2026:problem/";
  private static final Set<ProblemCode> NOT_A_DOCUMENT =
      Set.of(
          ProblemCode.EMPTY_FILE,
          ProblemCode.NOT_UTF8,
          ProblemCode.NOT_JSON,
          ProblemCode.TRAILING_CONTENT);

  private final int status;
  private final String type;
  private final String title;
  private final String detail;
  private final transient List<Problem> problems;
  private final transient Map<String, String> headers;

  private Refusal(
      int status,
      String type,
      String title,
      String detail,
      List<Problem> problems,
      Map<String, String> headers) {
    super(detail, null, false, false);
    this.status = status;
    this.type = type;
    this.title = title;
    this.detail = detail;
    this.problems = List.copyOf(problems);
    this.headers = Map.copyOf(headers);
  }

  private static Refusal plain(int status, String type, String title, String detail) {
    return new Refusal(status, type, title, detail, List.of(), Map.of());
  }

  /** The document sent is not one that can be used, for these reasons. */
  public static Refusal document(List<Problem> problems) {
    boolean isDocument = problems.stream().noneMatch(p -> NOT_A_DOCUMENT.contains(p.code()));
    return new Refusal(
        isDocument ? 422 : 400,
        "refused-document",
        "The document is refused",
        problems.size() == 1 ? problems.get(0).message() : problems.size() + " problems",
        problems,
        Map.of());
  }

  /** The path, the query or a header cannot be understood. */
  public static Refusal query(String detail) {
    return plain(400, "bad-query", "The request cannot be understood", detail);
  }

  /** Nobody is signed in, or by nothing that counts. */
  public static Refusal notSignedIn(String detail) {
    return new Refusal(
        401,
        "not-signed-in",
        "Sign in first",
        detail,
        List.of(),
        Map.of("WWW-Authenticate", "Bearer realm=\"tiderule\""));
  }

  public static Refusal notAllowed(String detail) {
    return plain(403, "not-allowed", "Not allowed", detail);
  }

  static Refusal foreign(String detail) {
    return plain(403, "foreign-request", "The request comes from elsewhere", detail);
  }

  public static Refusal notFound() {
    return plain(404, "not-found", "Not found", "There is nothing here for you.");
  }

  /**
   * There is something here, but not for this method.
   *
   * @param allowed the methods it is for, parted by commas
   */
  public static Refusal method(String allowed) {
    return new Refusal(
        405,
        "method-not-allowed",
        "Method not allowed",
        "Another method is meant here.",
        List.of(),
        Map.of("Allow", allowed));
  }

  static Refusal of(Conflict conflict) {
    return conflict.kind() == Conflict.Kind.CHANGED
        ? changed()
        : plain(409, "in-the-way", "Something is in the way", conflict.getMessage() + ".");
  }

  /** What is to be saved is not what was previewed. */
  public static Refusal otherPreview() {
    return plain(
        409,
        "in-the-way",
        "Something is in the way",
        "The table, its columns or the season is not what was looked at in that preview.");
  }

  /** What was to be changed is not as it was when the change was thought of. */
  public static Refusal changed() {
    return plain(
        412,
        "changed-meanwhile",
        "Changed meanwhile",
        "If-Match names a version that is no longer the present one. Read it again.");
  }

  static Refusal tooLarge(int mostBytes) {
    return plain(413, "too-large", "Too large", "It is longer than " + mostBytes + " bytes.");
  }

  static Refusal contentType() {
    return plain(
        415, "not-json", "Not a JSON document", "Send it with Content-Type: application/json.");
  }

  static Refusal formType() {
    return plain(415, "not-a-form", "Not a form", "Pages take what their own forms send.");
  }

  static Refusal keyUsedOtherwise() {
    return plain(
        422,
        KEY_USED_OTHERWISE,
        "Idempotency-Key was used for another request",
        "Take a new key for a new request.");
  }

  static Refusal versionNeeded() {
    return plain(
        428,
        "version-needed",
        "Say which version you change",
        "Send If-Match with the ETag of what you read.");
  }

  /** Too many attempts to sign in; the answer says when to come again. */
  public static Refusal tooOften(Duration wait) {
    return new Refusal(
        429,
        "too-many-attempts",
        "Too many attempts",
        "Wait before you try again.",
        List.of(),
        Map.of("Retry-After", Long.toString(wait.toSeconds() + 1)));
  }

  /** A fault of ours. It tells nothing of it. */
  public static Refusal fault() {
    return plain(500, "fault", "A fault of ours", "Please report it.");
  }

  /** More was asked at once than is taken on. */
  public static Refusal busy() {
    return new Refusal(
        503,
        "busy",
        "Too much at once",
        "Try again in a moment.",
        List.of(),
        Map.of("Retry-After", "1"));
  }

  /** An answer took longer than one may take. */
  static Refusal tooMuch() {
    return new Refusal(
        503,
        "too-long",
        "It takes too long",
        "The answer was not there in time. Try again when less is asked at once.",
        List.of(),
        Map.of("Retry-After", "60"));
  }

  /** The record cannot be used at present. */
  public static Refusal unavailable() {
    return new Refusal(
        503,
        "record-unavailable",
        "The record cannot be used",
        "It cannot be reached or written at present. Try again; nothing was acknowledged.",
        List.of(),
        Map.of("Retry-After", "5"));
  }

  /** The HTTP status. */
  public int status() {
    return status;
  }

  /** Headers that belong to it, by name. */
  public Map<String, String> headers() {
    return headers;
  }

  /** Whether a form was sent that had been sent already, with something else in it. */
  public boolean isKeyUsedOtherwise() {
    return type.equals(KEY_USED_OTHERWISE);
  }

  /** In a few words, what it is. */
  public String title() {
    return title;
  }

  /** In a sentence, what is wrong. */
  public String detail() {
    return detail;
  }

  /** What of a document is wrong; empty where none was sent. */
  public List<Problem> problems() {
    return problems;
  }

  /** Itself as RFC 9457 has it, on one line. */
  public String json() {
    return Document.text(
        Layout.ONE_LINE,
        json -> {
          json.text("type", TYPES + type)
              .text("title", title)
              .whole("status", status)
              .text("detail", getMessage());
          if (!problems.isEmpty()) {
            ProblemsJson.list(json, problems);
          }
        });
  }
}

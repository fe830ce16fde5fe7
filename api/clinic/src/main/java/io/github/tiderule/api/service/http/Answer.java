package io.github.tiderule.api.service.http;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;

/**
 * What a request is answered with.
 *
 * @param type media type of the body
 * @param body absent for an answer without one
 * @param location where what was made can be found
 * @param tag version of what is shown, as an ETag
 */
public record Answer(
    int status,
    String type,
    @Nullable String body,
    @Nullable String location,
    @Nullable String tag,
    @Nullable InputStream file) {

  private static final String JSON = "application/json";

  /** An answer that is no file. */
  Answer(
      int status,
      String type,
      @Nullable String body,
      @Nullable String location,
      @Nullable String tag) {
    this(status, type, body, location, tag, null);
  }

  /** What was asked for. */
  public static Answer json(String body) {
    return new Answer(200, JSON, body, null, null);
  }

  /** What was asked for, in its present version. */
  public static Answer json(String body, int version) {
    return new Answer(200, JSON, body, null, tagOf(version));
  }

  /** What was asked for, as a text of another type. */
  public static Answer text(String type, String body) {
    return new Answer(200, type, body, null, null);
  }

  /** What was asked for, as a text of another type, with what tells whether it changed. */
  public static Answer tagged(String type, String body, String tag) {
    return new Answer(200, type, body, null, '"' + tag + '"');
  }

  /** What was asked for, as a file. */
  public static Answer file(String type, byte[] content) {
    return new Answer(200, type, null, null, null, new ByteArrayInputStream(content));
  }

  /** A page for people. */
  public static Answer page(int status, String html) {
    return new Answer(status, "text/html; charset=utf-8", html, null, null);
  }

  /** Done; what came of it is to be seen elsewhere. */
  public static Answer seeOther(String location) {
    return new Answer(303, JSON, null, location, null);
  }

  /** What was made. */
  public static Answer made(String body, String location) {
    return new Answer(201, JSON, body, location, null);
  }

  /** What was made, in its first version. */
  public static Answer made(String body, String location, int version) {
    return new Answer(201, JSON, body, location, tagOf(version));
  }

  /** Done, and nothing to show. */
  public static Answer done() {
    return new Answer(204, JSON, null, null, null);
  }

  /** The same without its body, for whoever has it. */
  Answer unchanged() {
    return new Answer(304, type, null, null, tag);
  }

  /** The ETag of a version. */
  static String tagOf(int version) {
    return "\"" + version + "\"";
  }
}

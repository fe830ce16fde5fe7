package io.github.tiderule.api.service.http;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** A text that somebody chose, such as the id of an observation, as it stands in an address. */
public final class PathPart {

  private PathPart() {}

  /** As one part of a path, or one value of a query. */
  public static String of(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }
}

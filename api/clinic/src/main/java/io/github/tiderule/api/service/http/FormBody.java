package io.github.tiderule.api.service.http;

import io.javalin.http.Context;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The fields a form of a page sends. */
final class FormBody {

  /** The field that carries the session's token. */
  static final String CSRF = "csrf";

  private static final String TYPE = "application/x-www-form-urlencoded";
  private static final String KEPT = "tiderule.form";
  private static final int MOST_FIELDS = 2000;

  private FormBody() {}

  /**
   * The values of each field, in the order they were sent. The body is read once, however often
   * this is asked.
   *
   * @throws Refusal if it is no form, or one too long
   */
  static Map<String, List<String>> of(Context context) {
    Map<String, List<String>> kept = context.attribute(KEPT);
    if (kept != null) {
      return kept;
    }
    String type = context.contentType();
    String plain = type == null ? "" : type.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
    if (!plain.equals(TYPE)) {
      throw Refusal.formType();
    }
    String text = new String(Call.anyBytes(context), StandardCharsets.UTF_8);
    Map<String, List<String>> fields = new LinkedHashMap<>();
    if (!text.isEmpty()) {
      for (String field : text.split("&", MOST_FIELDS)) {
        String[] parts = field.split("=", 2);
        fields
            .computeIfAbsent(decoded(parts[0]), name -> new ArrayList<>())
            .add(parts.length == 1 ? "" : decoded(parts[1]));
      }
    }
    context.attribute(KEPT, fields);
    return fields;
  }

  private static String decoded(String text) {
    try {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      throw Refusal.query("The form cannot be read.");
    }
  }
}

package io.github.tiderule.api.page.frame;

import io.github.tiderule.api.access.Secrets;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The style and the script of the pages. A path names the content, so browsers may keep it. */
public final class Assets {

  private static final String BASE = "/assets/";
  private static final int DIGEST_LETTERS = 12;
  private static final Map<String, String> TYPES =
      Map.of(
          "page.css", "text/css; charset=utf-8",
          "page.js", "text/javascript; charset=utf-8",
          "mark.svg", "image/svg+xml");
  private static final Map<String, String> READ = new ConcurrentHashMap<>();

  private Assets() {}

  /** The route they are got by. */
  public static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, BASE + "{digest}/{name}", Route.Need.NOBODY, Assets::asset));
  }

  static String path(String name) {
    return BASE + digest(name) + "/" + name;
  }

  private static String digest(String name) {
    return Secrets.digest(content(name)).substring(0, DIGEST_LETTERS);
  }

  private static Answer asset(Call call) {
    String name = call.part("name");
    String type = TYPES.get(name);
    if (type == null) {
      throw Refusal.notFound();
    }
    if (call.part("digest").equals(digest(name))) {
      call.mayBeKept();
    }
    return Answer.text(type, content(name));
  }

  private static String content(String name) {
    return READ.computeIfAbsent(name, Assets::read);
  }

  private static String read(String name) {
    try (InputStream in = Assets.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

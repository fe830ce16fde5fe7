package io.github.tiderule.rules;

import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.source.Sources;
import io.github.tiderule.rules.source.Table;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The rules as written: for counting them, for the parameters they name, and for the stamp. */
final class RuleTexts {

  private static final String ROOT = "/io/github/tiderule/rulebase/";
  private static final Pattern RULE = Pattern.compile("(?m)^rule \"([^\"]+)\"");
  private static final Pattern PARAMETER = Pattern.compile("\\bParameter\\( id == \"([^\"]+)\"");

  private static final Pattern CONCERN = Pattern.compile("(?m)^// (.+?)\\.?$");
  private static final Pattern IMPORT = Pattern.compile("(?m)^import ([\\w.]+)");

  private final SortedMap<String, String> bodies;
  private final Map<String, String> files;
  private final Map<String, String> texts;
  private final Map<String, Map<String, Class<?>>> imports = new ConcurrentHashMap<>();
  private final String fingerprint;

  private RuleTexts(
      SortedMap<String, String> bodies,
      Map<String, String> files,
      Map<String, String> texts,
      String fingerprint) {
    this.bodies = bodies;
    this.files = files;
    this.texts = texts;
    this.fingerprint = fingerprint;
  }

  /** Reads the rule files named in the index beside them. */
  static RuleTexts load() {
    SortedMap<String, String> bodies = new TreeMap<>();
    Map<String, String> files = new HashMap<>();
    Map<String, String> texts = new HashMap<>();
    List<String> resources = new ArrayList<>();
    for (String file : Table.text(ROOT + "index.txt").lines().toList()) {
      resources.add(ROOT + file);
      String text = rules(file);
      texts.put(plain(file), text);
      Matcher rule = RULE.matcher(text);
      int from = -1;
      String name = "";
      while (rule.find()) {
        if (from >= 0) {
          put(bodies, name, text.substring(from, rule.start()));
        }
        from = rule.start();
        name = rule.group(1);
        files.put(name, plain(file));
      }
      if (from >= 0) {
        put(bodies, name, text.substring(from));
      }
    }
    resources.addAll(Parameters.resources());
    resources.add(Sources.RESOURCE);
    return new RuleTexts(bodies, files, texts, hash(resources));
  }

  private static String rules(String file) {
    String text = Table.text(ROOT + file);
    return file.endsWith(DecisionTable.SUFFIX) ? DecisionTable.asRules(text) : text;
  }

  private static void put(SortedMap<String, String> bodies, String name, String body) {
    if (bodies.put(name, body) != null) {
      throw new IllegalStateException("rule " + name + " is written twice");
    }
  }

  private static String hash(List<String> resources) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (String resource : resources) {
        digest.update(resource.getBytes(StandardCharsets.UTF_8));
        digest.update(Table.text(resource).getBytes(StandardCharsets.UTF_8));
      }
      return "sha256:" + HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** Names of all rules as written. */
  Iterable<String> names() {
    return bodies.keySet();
  }

  /** The rule files by name without ending. */
  Map<String, String> files() {
    return Map.copyOf(texts);
  }

  int count() {
    return bodies.size();
  }

  /** The parameters whose ids a rule's conditions spell out. */
  List<String> parameters(String rule) {
    List<String> ids = new ArrayList<>();
    Matcher matcher = PARAMETER.matcher(bodies.getOrDefault(rule, ""));
    while (matcher.find()) {
      ids.add(matcher.group(1));
    }
    return List.copyOf(ids);
  }

  private static String plain(String file) {
    return file.replace(".drl", "");
  }

  /** The file a rule stands in, without its ending. */
  String file(String rule) {
    return files.getOrDefault(rule, "");
  }

  /** What a file says it is about: its first note. */
  String concern(String file) {
    Matcher matcher = CONCERN.matcher(texts.getOrDefault(file, ""));
    return matcher.find() ? matcher.group(1) : file;
  }

  /** The classes that a rule's conditions may name, by simple name. */
  Map<String, Class<?>> imports(String rule) {
    return imports.computeIfAbsent(file(rule), file -> imports(rule, texts.getOrDefault(file, "")));
  }

  private static Map<String, Class<?>> imports(String rule, String text) {
    Map<String, Class<?>> imports = new HashMap<>();
    imports.put("Math", Math.class);
    imports.put("Double", Double.class);
    Matcher matcher = IMPORT.matcher(text);
    while (matcher.find()) {
      String name = matcher.group(1);
      try {
        imports.put(name.substring(name.lastIndexOf('.') + 1), Class.forName(name));
      } catch (ClassNotFoundException e) {
        throw new IllegalStateException("rule " + rule + " imports what is not there: " + name, e);
      }
    }
    return Map.copyOf(imports);
  }

  String fingerprint() {
    return fingerprint;
  }
}

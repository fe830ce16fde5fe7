package io.github.tiderule.rules.condition.expression;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** The words, numbers, texts and signs of a test as written, read one after the other. */
public final class Tokens {

  private static final Pattern TOKEN =
      Pattern.compile(
          "\"(?:\\\\.|[^\"\\\\])*\"|[0-9]+(?:\\.[0-9]+)?|[$A-Za-z_][$\\w]*|>=|<=|==|!=|&&|\\|\\||\\S");

  private final List<String> tokens;
  private int at;

  public Tokens(String text) {
    this(TOKEN.matcher(text).results().map(MatchResult::group).toList());
  }

  private Tokens(List<String> tokens) {
    this.tokens = tokens;
  }

  /** Those of a test, without the brackets it may stand in. */
  public static Tokens ofTest(String text) {
    String bare = text.strip();
    boolean wrapped =
        bare.startsWith("(") && bare.endsWith(")") && bare.indexOf(')') == bare.length() - 1;
    return new Tokens(wrapped ? bare.substring(1, bare.length() - 1) : bare);
  }

  /** The same ones, to be read from the first on. */
  public Tokens again() {
    return new Tokens(tokens);
  }

  public boolean done() {
    return at == tokens.size();
  }

  /** The next token, or nothing at the end. */
  public String peek() {
    return done() ? "" : tokens.get(at);
  }

  public String next() {
    if (done()) {
      throw new IllegalArgumentException("the test ends early");
    }
    return tokens.get(at++);
  }

  public boolean take(String token) {
    boolean there = peek().equals(token);
    if (there) {
      at++;
    }
    return there;
  }

  public void expect(String token) {
    if (!take(token)) {
      throw new IllegalArgumentException(token + " expected at " + peek());
    }
  }

  /** The rest, cut wherever one of some tokens stands outside all brackets, those left out. */
  public List<Tokens> cut(List<String> separators) {
    List<Tokens> parts = new ArrayList<>();
    List<String> part = new ArrayList<>();
    int depth = 0;
    for (String token : tokens.subList(at, tokens.size())) {
      depth += token.equals("(") ? 1 : token.equals(")") ? -1 : 0;
      if (depth == 0 && separators.contains(token)) {
        parts.add(new Tokens(part));
        part = new ArrayList<>();
      } else {
        part.add(token);
      }
    }
    parts.add(new Tokens(part));
    return parts;
  }

  /** The first of some tokens that stands outside all brackets, or nothing. */
  public String first(List<String> wanted) {
    int depth = 0;
    for (String token : tokens.subList(at, tokens.size())) {
      depth += token.equals("(") ? 1 : token.equals(")") ? -1 : 0;
      if (depth == 0 && wanted.contains(token)) {
        return token;
      }
    }
    return "";
  }

  @Override
  public String toString() {
    return String.join(" ", tokens.subList(at, tokens.size()))
        .replace(" . ", ".")
        .replace(" (", "(")
        .replace(" ,", ",");
  }
}

package io.github.tiderule.rules.condition;

/**
 * One test of a condition with what it saw.
 *
 * @param words what it asks for, in plain words
 * @param written the test as the rule file writes it
 * @param saw the value it saw; empty where there was none to see
 */
public record CheckSeen(String words, String written, Outcome outcome, String saw) {}

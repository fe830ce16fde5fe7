package io.github.tiderule.api.page.reasoning;

/**
 * An observation that something rests on.
 *
 * @param words what people call it
 */
public record Named(String id, String words) {}

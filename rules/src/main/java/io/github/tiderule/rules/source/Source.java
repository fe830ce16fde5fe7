package io.github.tiderule.rules.source;

/**
 * Where a figure comes from.
 *
 * @param key short name used by rules and parameters
 * @param citation the work as one would cite it, or a plain statement for practice and own values
 * @param readAs how it was read: abstract, opening, second-hand, from memory, …
 */
public record Source(String key, String citation, String readAs) {}

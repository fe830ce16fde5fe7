package io.github.tiderule.spark;

import java.io.Serializable;

/**
 * One line of the input.
 *
 * @param number its number, from 1
 * @param utf8 its bytes as they were given, without the line feed
 */
record NumberedLine(long number, byte[] utf8) implements Serializable {}

/** A job for Apache Spark that answers cycle files by the million as {@code batch} does. */
@NullMarked
package io.github.tiderule.spark;

import org.jspecify.annotations.NullMarked;

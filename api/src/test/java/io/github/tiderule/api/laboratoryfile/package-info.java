@NullMarked
package io.github.tiderule.api.laboratoryfile;

import org.jspecify.annotations.NullMarked;

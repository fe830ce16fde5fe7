@NullMarked
package io.github.tiderule.api.service;

import org.jspecify.annotations.NullMarked;

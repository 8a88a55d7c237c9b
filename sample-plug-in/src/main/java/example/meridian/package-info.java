/** A sample plug-in: how bright a planet is along its central meridian and equator, and how far apart two places on it are. */
package example.meridian;

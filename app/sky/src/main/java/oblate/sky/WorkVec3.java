/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** Three coordinates that are changed in place, so that a loop over many instants makes no garbage. Belongs to one thread. */
final class WorkVec3 {
    double x;
    double y;
    double z;

    static WorkVec3 of(Vec3 v) {
        return new WorkVec3().set(v.x(), v.y(), v.z());
    }

    WorkVec3 set(double newX, double newY, double newZ) {
        x = newX;
        y = newY;
        z = newZ;
        return this;
    }

    WorkVec3 set(WorkVec3 o) {
        return set(o.x, o.y, o.z);
    }

    /** Adds a factor times a vector. */
    WorkVec3 add(double factor, WorkVec3 o) {
        return set(x + factor * o.x, y + factor * o.y, z + factor * o.z);
    }

    WorkVec3 subtract(WorkVec3 o) {
        return set(x - o.x, y - o.y, z - o.z);
    }

    WorkVec3 scale(double factor) {
        return set(x * factor, y * factor, z * factor);
    }

    double dot(WorkVec3 o) {
        return x * o.x + y * o.y + z * o.z;
    }

    double norm() {
        return Math.sqrt(dot(this));
    }

    /** Angle to another vector (rad, 0…π), accurate for small ones too. */
    double angleRad(WorkVec3 o) {
        double cx = y * o.z - z * o.y;
        double cy = z * o.x - x * o.z;
        double cz = x * o.y - y * o.x;
        return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), dot(o));
    }

    Vec3 frozen() {
        return new Vec3(x, y, z);
    }
}

import { newPoses } from "../../src/kinematics/poses.ts";
import { frontOfBench, places, solveMap } from "./map.ts";

/** A process that compiles a car, solves its first map and ends. */
const poses = newPoses(places * places);
solveMap(frontOfBench(), poses);
if (!(poses[poses.length - 1] !== 0)) throw new Error("the map was not solved");

// The desk: where the author writes, and sees at once what holds.

import "./desk.css";
import "./desk-app";

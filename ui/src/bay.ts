import { mount } from "svelte";
import { tauriBridge } from "./bridge";
import BayBoard from "./bay/BayBoard.svelte";
import "./style/base.css";

const target = document.getElementById("window");
if (target) mount(BayBoard, { target, props: { bridge: tauriBridge } });

import { mount } from "svelte";
import { tauriBridge } from "./bridge";
import ReviewWindow from "./review/ReviewWindow.svelte";
import "./style/base.css";

const target = document.getElementById("window");
if (target) mount(ReviewWindow, { target, props: { bridge: tauriBridge } });

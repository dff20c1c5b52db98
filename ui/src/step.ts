import { mount } from "svelte";
import { tauriBridge } from "./bridge";
import StepWindow from "./step/StepWindow.svelte";
import "./style/base.css";

const target = document.getElementById("window");
if (target) mount(StepWindow, { target, props: { bridge: tauriBridge } });
